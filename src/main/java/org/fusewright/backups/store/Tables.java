package org.fusewright.backups.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** The tables of a schema, as the database's own catalog tells them. */
final class Tables {
    private static final String HISTORY = "flyway_schema_history";

    private Tables() {}

    /** A connection's own schema: the first of its search path. */
    static String currentSchema(Connection connection) throws SQLException {
        return strings(connection, "select current_schema()").getFirst();
    }

    /**
     * All tables with data of the service, each behind those that its rows refer to. Without the
     * unlogged ones, which need not outlive a crash: sessions and attempts to log in.
     */
    static List<String> list(Connection connection, String schema) throws SQLException {
        List<String> tables =
                strings(
                        connection,
                        "select c.relname from pg_class c join pg_namespace n on n.oid ="
                                + " c.relnamespace where n.nspname = ? and c.relkind = 'r' and"
                                + " c.relpersistence = 'p' and c.relname <> '"
                                + HISTORY
                                + "' order by c.relname",
                        schema);
        Set<String> ordered = new LinkedHashSet<>();
        while (ordered.size() < tables.size()) {
            int before = ordered.size();
            for (String table : tables) {
                if (ordered.containsAll(referred(connection, schema, table))) {
                    ordered.add(table);
                }
            }
            if (ordered.size() == before) {
                throw new IllegalStateException("tables refer to each other in a circle");
            }
        }
        return new ArrayList<>(ordered);
    }

    private static List<String> referred(Connection connection, String schema, String table)
            throws SQLException {
        return strings(
                connection,
                "select distinct other.relname from pg_constraint r join pg_class own on own.oid ="
                        + " r.conrelid join pg_class other on other.oid = r.confrelid join"
                        + " pg_namespace n on n.oid = own.relnamespace where r.contype = 'f' and"
                        + " n.nspname = ? and own.relname = ? and other.oid <> own.oid",
                schema,
                table);
    }

    /** The version of the schema that the connection is in. */
    static String schemaVersion(Connection connection) throws SQLException {
        return strings(
                        connection,
                        "select version from "
                                + HISTORY
                                + " where success and version is not null order by installed_rank"
                                + " desc limit 1")
                .getFirst();
    }

    /** Statements that let each counter of a table's keys go on behind its highest row. */
    static List<String> counterUpdates(Connection connection, String schema, String table)
            throws SQLException {
        return strings(
                connection,
                "select format('select setval(pg_get_serial_sequence(%L, %L), coalesce((select"
                    + " max(%I) from %I), 0) + 1, false)', quote_ident(table_schema) || '.' ||"
                    + " quote_ident(table_name), column_name, column_name, table_name) from"
                    + " information_schema.columns where table_schema = ? and table_name = ? and"
                    + " is_identity = 'YES'",
                schema,
                table);
    }

    static List<String> strings(Connection connection, String query, String... values)
            throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(query)) {
            for (int i = 0; i < values.length; i++) {
                statement.setString(i + 1, values[i]);
            }
            List<String> found = new ArrayList<>();
            try (ResultSet rows = statement.executeQuery()) {
                while (rows.next()) {
                    found.add(rows.getString(1));
                }
            }
            return found;
        }
    }

    /** A name of the database's own as it stands in a statement. */
    static String quoted(String name) {
        return '"' + name.replace("\"", "\"\"") + '"';
    }
}
