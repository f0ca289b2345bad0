package org.fusewright.changes;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.ServiceTest;
import org.fusewright.TestDatabase;
import org.junit.jupiter.api.Test;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/** No table of the schema is left out of the trail without a reason. */
@ServiceTest
class TrailTablesTest {
    private static final Map<String, String> NOT_IN_THE_TRAIL =
            Map.of(
                    "flyway_schema_history", "the migrations' own",
                    "change_entry", "the trail itself",
                    "account_link", "secrets, each of use once; what they made is told",
                    "log_in_attempt", "nothing that anybody keeps; lost in a crash",
                    "spring_session", "likewise",
                    "spring_session_attributes", "likewise",
                    "quote_count", "a counter: the quote has the number that it gave",
                    "order_count", "a counter: the order has the number that it gave");

    /**
     * Columns of the catalog's tables that the trail does not tell, as they only hold rows
     * together.
     */
    private static final Map<String, Set<String>> NOT_TOLD =
            Map.of("offer", Set.of("id"), "mark_up", Set.of("id"));

    /** What pg_trigger says of a trigger for each row after insert, update and delete. */
    private static final int AFTER_EACH_ROW = 1 + 4 + 8 + 16;

    /** Likewise before any statement, truncate too. */
    private static final int BEFORE_EACH_STATEMENT = 2 + 4 + 8 + 16 + 32;

    private static final int AFTER_OR_BEFORE_TRUNCATE = 2 + 32;

    private static List<String> ask(String query) throws SQLException {
        try (Connection connection = TestDatabase.connect();
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(query)) {
            List<String> found = new ArrayList<>();
            while (rows.next()) {
                found.add(rows.getString(1));
            }
            return found;
        }
    }

    private static List<String> tablesWith(String function, int type) throws SQLException {
        return ask(
                """
                select c.relname from pg_trigger t join pg_class c on c.oid = t.tgrelid
                join pg_proc p on p.oid = t.tgfoid
                where c.relnamespace = current_schema()::regnamespace and p.proname = '%s'
                  and t.tgtype = %d and t.tgenabled = 'O'
                """
                        .formatted(function, type));
    }

    private static List<String> rowByRow() throws SQLException {
        return tablesWith("note_change", AFTER_EACH_ROW);
    }

    private static List<String> ofTheCatalog() throws SQLException {
        return tablesWith("remember_catalog", BEFORE_EACH_STATEMENT);
    }

    @Test
    void holdsEachTableOrSaysWhyNot() throws SQLException {
        List<String> tables =
                ask(
                        "select table_name from information_schema.tables where table_schema ="
                                + " current_schema() and table_type = 'BASE TABLE'");

        assertThat(
                        Stream.of(rowByRow(), ofTheCatalog(), NOT_IN_THE_TRAIL.keySet())
                                .flatMap(each -> each.stream()))
                .containsExactlyInAnyOrderElementsOf(tables);
    }

    @Test
    void tellsWhatATruncateTakesOfEachTable() throws SQLException {
        assertThat(tablesWith("note_emptying", AFTER_OR_BEFORE_TRUNCATE))
                .containsExactlyInAnyOrderElementsOf(rowByRow());
    }

    /** A file would be copied whole into the trail, and again with each change. */
    @Test
    void tellsEachFileByDigest() throws SQLException {
        for (String table : rowByRow()) {
            List<String> files =
                    ask(
                            "select column_name from information_schema.columns where table_schema"
                                    + " = current_schema() and data_type = 'bytea' and table_name ="
                                    + " '"
                                    + table
                                    + "'");
            assertThat(List.of(settings(table).get(4).replaceAll("[{}]", "").split(",")))
                    .as(table)
                    .containsAll(files);
        }
    }

    private static List<String> settings(String table) throws SQLException {
        return ask(
                """
                select unnest(string_to_array(encode(tgargs, 'escape'), '\\000'))
                from pg_trigger where tgname = 'note_change' and tgrelid = '%s'::regclass
                """
                        .formatted(table));
    }

    @Test
    void tellsEachColumnOfTheCatalog() throws SQLException {
        for (String table : ofTheCatalog()) {
            if (table.equals("offer_price")) {
                continue;
            }
            Set<String> told =
                    new TreeSet<>(
                            ask(
                                    "select distinct jsonb_object_keys(fields) from catalog_line"
                                            + " where table_name = '"
                                            + table
                                            + "'"));
            Set<String> columns =
                    new TreeSet<>(
                            ask(
                                    "select column_name from information_schema.columns where"
                                            + " table_schema = current_schema() and table_name = '"
                                            + table
                                            + "'"));
            columns.removeAll(NOT_TOLD.getOrDefault(table, Set.of()));
            if (table.equals("offer")) {
                columns.add("prices");
            }
            assertThat(told).as(table).isEqualTo(columns);
        }
    }

    @Test
    void knowsEachKindOfRecord() throws SQLException {
        Set<String> kinds = new TreeSet<>(ask("select distinct kind from catalog_line"));
        for (String table : rowByRow()) {
            kinds.add(settings(table).getFirst());
        }
        assertThat(kinds)
                .containsExactlyInAnyOrderElementsOf(
                        Stream.of(RecordKind.values()).map(RecordKind::code).toList());
    }
}
