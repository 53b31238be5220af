package floorgauge.app.export;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion.VersionFlag;
import floorgauge.app.result.FindingsJson;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TablesTest {

    /** A name that needs every rule of quoting. */
    private static final String ODD_NAME = "shell, \"closeouts\"\n3.mp4";

    @TempDir
    private Path folder;

    @Test
    void noFilmLeavesColumnNamesAlone() throws IOException {
        new CsvTables().write(ExportedFilms.everything(), out());
        assertThat(Files.readString(folder.resolve("out/roles.csv")))
                .isEqualTo("film,film_sha256,finding,role,player_id,player\r\n");
    }

    /** Read by the grammar of RFC 4180, section 2, rather than by a reader that forgives. */
    @Test
    void commaSeparatedValuesKeepTheStandard() throws IOException {
        new CsvTables().write(order(), out());
        List<List<String>> findings =
                rfc4180(Files.readString(folder.resolve("out/findings.csv"), StandardCharsets.UTF_8));
        assertThat(findings).hasSize(3).allSatisfy(row -> assertThat(row).hasSize(12));
        assertThat(findings.get(1))
                .startsWith(ODD_NAME, "0".repeat(64), "1", "1", "weak screen", "true", "down screen", "1.6", "4.2");
        List<List<String>> figures =
                rfc4180(Files.readString(folder.resolve("out/figures.csv"), StandardCharsets.UTF_8));
        assertThat(figures)
                .contains(List.of(
                        ODD_NAME,
                        "0".repeat(64),
                        "1",
                        "gap",
                        "0.42",
                        "0.08",
                        "m",
                        "contactGapMetres",
                        "0.1",
                        "at most"));
        assertThat(figures).hasSize(1 + 5 + 2);
    }

    /** DuckDB's own reader of CSV and of Parquet must see the same rows. */
    @Test
    void parquetHoldsWhatTheTextHolds() throws IOException, SQLException {
        ExportFolder out = out();
        new CsvTables().write(order(), out);
        new ParquetTables().write(order(), out);
        try (Connection duck = DriverManager.getConnection("jdbc:duckdb:");
                Statement statement = duck.createStatement()) {
            for (String table : List.of("findings", "roles", "figures")) {
                String parquet = folder.resolve("out/" + table + ".parquet").toString();
                String csv = folder.resolve("out/" + table + ".csv").toString();
                String difference = "SELECT count(*) FROM ((FROM read_parquet('" + parquet + "') EXCEPT FROM read_csv('"
                        + csv
                        + "', all_varchar = false, types = {'film_sha256': 'VARCHAR'})) UNION ALL (FROM read_csv('"
                        + csv
                        + "', types = {'film_sha256': 'VARCHAR'}) EXCEPT FROM read_parquet('" + parquet + "')))";
                assertThat(number(statement, difference)).as(table).isZero();
            }
            assertThat(number(
                            statement,
                            "SELECT count(*) FROM read_parquet('" + folder.resolve("out/findings.parquet")
                                    + "') WHERE flag AND severity > 0.5"))
                    .isEqualTo(1);
        }
    }

    @Test
    void theDocumentKeepsItsSchema() throws IOException {
        new FindingsDocuments().write(order(), out());
        JsonNode document =
                new ObjectMapper().readTree(folder.resolve("out/findings.json").toFile());
        JsonSchema schema = schema();
        assertThat(schema.validate(document)).isEmpty();
        assertThat(document.at("/films/0/findings/0/finding/kind").asText()).isEqualTo("weak screen");
        ((com.fasterxml.jackson.databind.node.ObjectNode) document.at("/films/0/findings/0/finding"))
                .put("mood", "good");
        assertThat(schema.validate(document)).hasSize(1);
    }

    @Test
    void theSameResultsGiveTheSameBytes() throws IOException {
        for (Exporter exporter : List.of(
                new CsvTables(), new ParquetTables(), new FindingsDocuments(), new EditTimeline(), new CutList())) {
            ExportFolder first = ExportFolder.open(folder.resolve("first"));
            ExportFolder second = ExportFolder.open(folder.resolve("second"));
            exporter.write(order(), first);
            exporter.write(order(), second);
            for (int i = 0; i < first.written().size(); i++) {
                assertThat(second.written().get(i))
                        .hasSameBinaryContentAs(first.written().get(i));
            }
        }
    }

    private static long number(Statement statement, String sql) throws SQLException {
        try (ResultSet rows = statement.executeQuery(sql)) {
            rows.next();
            return rows.getLong(1);
        }
    }

    private static JsonSchema schema() throws IOException {
        String findings = resource(FindingsJson.class, "findings.schema.json");
        JsonSchemaFactory factory = JsonSchemaFactory.getInstance(
                VersionFlag.V202012,
                builder -> builder.schemaLoaders(loaders ->
                        loaders.schemas(address -> address.equals("urn:floorgauge:findings:1") ? findings : null)));
        return factory.getSchema(resource(FindingsDocuments.class, "export.schema.json"));
    }

    private static String resource(Class<?> beside, String name) throws IOException {
        try (InputStream in = beside.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    /** Records and fields of a text; fails where it breaks the grammar. */
    private static List<List<String>> rfc4180(String text) {
        assertThat(text).endsWith("\r\n");
        List<List<String>> records = new ArrayList<>();
        List<String> record = new ArrayList<>();
        int at = 0;
        while (at < text.length()) {
            StringBuilder field = new StringBuilder();
            if (text.charAt(at) == '"') {
                at++;
                while (text.charAt(at) != '"' || text.charAt(at + 1) == '"') {
                    at += text.charAt(at) == '"' ? 1 : 0;
                    field.append(text.charAt(at++));
                }
                at++;
            } else {
                while (text.charAt(at) != ',' && text.charAt(at) != '\r') {
                    assertThat(text.charAt(at)).isNotIn('"', '\n');
                    field.append(text.charAt(at++));
                }
            }
            record.add(field.toString());
            if (text.charAt(at) == ',') {
                at++;
            } else {
                assertThat(text.substring(at, at + 2)).isEqualTo("\r\n");
                at += 2;
                records.add(record);
                record = new ArrayList<>();
            }
        }
        return records;
    }

    private ExportOrder order() throws IOException {
        return ExportedFilms.everything(ExportedFilms.results(folder, "odd", ODD_NAME, "0".repeat(64)));
    }

    private ExportFolder out() {
        return ExportFolder.open(folder.resolve("out"));
    }
}
