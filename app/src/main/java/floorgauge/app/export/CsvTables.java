package floorgauge.app.export;

import java.io.IOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Comma-separated values as RFC 4180 has them, in UTF-8: lines end in CR LF, the first line names the columns, a field with a comma,
 * a quote or a line break stands in quotes. A value that is not there is an empty field.
 */
final class CsvTables implements Exporter {

    @Override
    public void write(ExportOrder order, ExportFolder folder) {
        for (Table table : FindingTables.of(order.films())) {
            folder.write(table.name() + ".csv", file -> write(table, file));
        }
    }

    private static void write(Table table, Path file) throws IOException {
        try (Writer out = Files.newBufferedWriter(file, StandardCharsets.UTF_8)) {
            out.write(line(table.columns().stream().map(Table.Column::name).toList()));
            for (List<Object> row : table.rows()) {
                out.write(line(row.stream().map(CsvTables::text).toList()));
            }
        }
    }

    private static String line(List<String> fields) {
        return fields.stream().map(CsvTables::quoted).collect(Collectors.joining(",")) + "\r\n";
    }

    private static String text(Object value) {
        if (value == null) {
            return "";
        }
        return value instanceof Double number ? BigDecimal.valueOf(number).toPlainString() : value.toString();
    }

    private static String quoted(String field) {
        boolean plain = field.chars().noneMatch(c -> c == ',' || c == '"' || c == '\r' || c == '\n');
        return plain ? field : "\"" + field.replace("\"", "\"\"") + "\"";
    }
}
