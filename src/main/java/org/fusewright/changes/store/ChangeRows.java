package org.fusewright.changes.store;

import org.fusewright.changes.Change;
import org.fusewright.changes.ChangeAction;
import org.fusewright.changes.ChangeHead;
import org.fusewright.changes.ChangeQuery;
import org.fusewright.changes.RecordKind;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The rows of {@code change_entry}, to be read: only the database's triggers write them. */
@Repository
public class ChangeRows {
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final String HEAD =
            """
            id, made_at, made_by, kind, record, table_name, row_key, action,
            array(select jsonb_object_keys(coalesce(after, before))) as fields
            """;
    private static final String WHOLE = HEAD + ", before::text as before, after::text as after";

    private final JdbcClient jdbc;

    ChangeRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Newest first. */
    public List<Change> list(ChangeQuery query) {
        return ask(WHOLE, query).query((row, _) -> change(row)).list();
    }

    /** As above. */
    public List<ChangeHead> listHeads(ChangeQuery query) {
        return ask(HEAD, query).query((row, _) -> head(row)).list();
    }

    public Optional<Change> find(long id) {
        return jdbc.sql("select " + WHOLE + " from change_entry where id = :id")
                .param("id", id)
                .query((row, _) -> change(row))
                .optional();
    }

    /** Names only what is asked for, so that each list is read along the index made for it. */
    private JdbcClient.StatementSpec ask(String columns, ChangeQuery query) {
        List<String> conditions = new ArrayList<>();
        if (query.after().isPresent()) {
            conditions.add("id < :after");
        }
        query.kind().ifPresent(_ -> conditions.add("kind = :kind"));
        query.record().ifPresent(_ -> conditions.add("record = :record"));
        query.by().ifPresent(_ -> conditions.add("made_by = :by"));
        String where = conditions.isEmpty() ? "" : " where " + String.join(" and ", conditions);
        return jdbc.sql(
                        "select "
                                + columns
                                + " from change_entry"
                                + where
                                + " order by id desc limit :limit")
                .param("after", query.after().orElse(Long.MAX_VALUE))
                .param("kind", query.kind().map(RecordKind::code).orElse(""))
                .param("record", query.record().orElse(""))
                .param("by", query.by().orElse(""))
                .param("limit", query.limit());
    }

    private static Change change(ResultSet row) throws SQLException {
        return new Change(head(row), document(row, "before"), document(row, "after"));
    }

    private static ChangeHead head(ResultSet row) throws SQLException {
        return new ChangeHead(
                row.getLong("id"),
                row.getTimestamp("made_at").toInstant(),
                row.getString("made_by"),
                RecordKind.parse(row.getString("kind")),
                row.getString("record"),
                row.getString("table_name"),
                row.getString("row_key"),
                ChangeAction.parse(row.getString("action")),
                Arrays.asList((String[]) row.getArray("fields").getArray()));
    }

    private static Optional<JsonNode> document(ResultSet row, String column) throws SQLException {
        return Optional.ofNullable(row.getString(column)).map(MAPPER::readTree);
    }
}
