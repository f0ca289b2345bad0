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

    /** What pg_trigger says of a trigger for each row after insert, update and delete. */
    private static final int AFTER_EACH_ROW = 1 + 4 + 8 + 16;

    /** Likewise of triggers for each statement. */
    private static final List<Integer> AFTER_INSERT_DELETE_AND_UPDATE = List.of(4, 8, 16);

    private static final int BEFORE_TRUNCATE = 2 + 32;

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
        return tablesWith("note_lines", BEFORE_TRUNCATE);
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
        assertThat(tablesWith("note_emptying", BEFORE_TRUNCATE))
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
            assertThat(
                            List.of(
                                    settings(table, "note_change")
                                            .get(4)
                                            .replaceAll("[{}]", "")
                                            .split(",")))
                    .as(table)
                    .containsAll(files);
        }
    }

    private static List<String> settings(String table, String trigger) throws SQLException {
        return ask(
                """
                select unnest(string_to_array(encode(tgargs, 'escape'), '\\000'))
                from pg_trigger where tgname = '%s' and tgrelid = '%s'::regclass
                """
                        .formatted(trigger, table));
    }

    @Test
    void tellsOfTheCatalogByStatements() throws SQLException {
        for (int type : AFTER_INSERT_DELETE_AND_UPDATE) {
            assertThat(tablesWith("note_lines", type))
                    .containsExactlyInAnyOrderElementsOf(ofTheCatalog());
        }
    }

    @Test
    void tellsEachColumnOfTheCatalog() throws SQLException {
        for (String table : ofTheCatalog()) {
            // The offers of a part are told together.
            String line = table.equals("offer") ? "jsonb_path_query(after, '$.*')" : "after";
            List<String> told =
                    ask(
                            "select distinct jsonb_object_keys("
                                    + line
                                    + ") from change_entry where action = 'added' and"
                                    + " table_name = '"
                                    + table
                                    + "'");
            List<String> columns =
                    ask(
                            "select column_name from information_schema.columns where"
                                    + " table_schema = current_schema() and table_name = '"
                                    + table
                                    + "'");
            assertThat(told).as(table).containsExactlyInAnyOrderElementsOf(columns);
        }
    }

    @Test
    void knowsEachKindOfRecord() throws SQLException {
        Set<String> kinds = new TreeSet<>();
        for (String table : rowByRow()) {
            kinds.add(settings(table, "note_change").getFirst());
        }
        for (String table : ofTheCatalog()) {
            kinds.add(settings(table, "note_changed").getFirst());
        }
        assertThat(kinds)
                .containsExactlyInAnyOrderElementsOf(
                        Stream.of(RecordKind.values()).map(RecordKind::code).toList());
    }
}
