package org.fusewright.catalogs.store;

import org.springframework.jdbc.core.ConnectionCallback;
import org.springframework.jdbc.core.JdbcOperations;

import java.util.Collection;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Makes a table hold just the rows of an import. They are copied beside it first; then only what
 * differs is removed, changed and added, so that an import of much costs little where little is
 * new, the trail tells nothing else, and readers go on with what was there until the transaction
 * ends.
 */
final class TableExchange {

    private final JdbcOperations jdbc;
    private final String table;
    private final List<String> keys;
    private final String sameKey;
    private final List<String> others;

    private TableExchange(
            JdbcOperations jdbc,
            String table,
            List<String> keys,
            String sameKey,
            List<String> others) {
        this.jdbc = jdbc;
        this.table = table;
        this.keys = keys;
        this.sameKey =
                keys.stream()
                        .map(key -> sameKey.formatted(key))
                        .collect(Collectors.joining(" and "));
        this.others = others;
    }

    /**
     * @param keys the columns by which a row is known, never null
     * @param others its other columns
     */
    static TableExchange of(
            JdbcOperations jdbc, String table, List<String> keys, List<String> others) {
        return new TableExchange(jdbc, table, keys, "t.%1$s = n.%1$s", others);
    }

    /**
     * @param keys texts by which a row is known; each may be null, but is never empty
     */
    static TableExchange ofOpenKeys(
            JdbcOperations jdbc, String table, List<String> keys, List<String> others) {
        return new TableExchange(
                jdbc, table, keys, "coalesce(t.%1$s, '') = coalesce(n.%1$s, '')", others);
    }

    /** Writes one row, keys first. */
    interface RowWriter<T> {
        void write(T row, CopiedRows values);
    }

    /** Copies the new rows beside the table, and counts both for the plans of what follows. */
    <T> TableExchange bring(Collection<T> rows, RowWriter<T> writer) {
        jdbc.execute(
                "create temporary table %s on commit drop as select %s from %s where false"
                        .formatted(fresh(), columns(""), table));
        jdbc.execute(
                (ConnectionCallback<Void>)
                        connection -> {
                            CopiedRows.copy(
                                    connection,
                                    fresh(),
                                    columns(""),
                                    copied -> {
                                        for (T row : rows) {
                                            writer.write(row, copied);
                                            copied.endRow();
                                        }
                                    });
                            return null;
                        });
        jdbc.execute("analyze " + fresh());
        return this;
    }

    /** Removes what is there no more. */
    void remove() {
        jdbc.execute(
                "delete from %s t where not exists (select from %s n where %s)"
                        .formatted(table, fresh(), sameKey));
    }

    /** Changes what differs and adds what is new, in the order in which its index grows. */
    void put() {
        jdbc.execute(
                "update %s t set (%s) = row(%s) from %s n where %s and (%s) is distinct from (%s)"
                        .formatted(
                                table,
                                String.join(", ", others),
                                list(others, "n."),
                                fresh(),
                                sameKey,
                                list(others, "t."),
                                list(others, "n.")));
        jdbc.execute(
                """
                insert into %s (%s) select %s from %s n
                where not exists (select from %s t where %s) order by %s
                """
                        .formatted(
                                table,
                                columns(""),
                                columns("n."),
                                fresh(),
                                table,
                                sameKey,
                                list(keys, "n.")));
    }

    private String fresh() {
        return "imported_" + table;
    }

    private String columns(String row) {
        return list(Stream.concat(keys.stream(), others.stream()).toList(), row);
    }

    private static String list(List<String> columns, String row) {
        return columns.stream().map(column -> row + column).collect(Collectors.joining(", "));
    }
}
