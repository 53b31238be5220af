package floorgauge.app.export;

import java.util.List;
import java.util.Objects;

/**
 * A table of findings.
 *
 * @param name without an ending, also its name in SQL
 * @param columns in order
 * @param rows a value a column: a {@link String}, {@link Long}, {@link Double} or {@link Boolean} as the column says, or null
 */
record Table(String name, List<Column> columns, List<List<Object>> rows) {

    /** What a column holds. */
    enum Type {
        TEXT("VARCHAR"),
        WHOLE("BIGINT"),
        NUMBER("DOUBLE"),
        TRUTH("BOOLEAN");

        private final String sql;

        Type(String sql) {
            this.sql = sql;
        }

        String sql() {
            return sql;
        }
    }

    /**
     * A column.
     *
     * @param name lower case, with its unit
     * @param type what it holds
     */
    record Column(String name, Type type) {}

    Table {
        Objects.requireNonNull(name, "name");
        columns = List.copyOf(columns);
        rows = List.copyOf(rows);
        for (List<Object> row : rows) {
            if (row.size() != columns.size()) {
                throw new IllegalArgumentException(
                        name + " has " + columns.size() + " columns, a row has " + row.size());
            }
        }
    }
}
