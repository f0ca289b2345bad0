package org.fusewright.changes;

import java.time.Instant;
import java.util.List;

/**
 * A change in a list.
 *
 * @param id rising in the order of writing
 * @param at when the transaction began that made it
 * @param by who asked for it; "service" for what nobody asked for
 * @param record which one of its kind: its number, or its name in the catalog
 * @param table which of the tables that hold such a record
 * @param row the key of the row in its table
 * @param fields the columns that differ, or all of a row that was added or removed
 */
public record ChangeHead(
        long id,
        Instant at,
        String by,
        RecordKind kind,
        String record,
        String table,
        String row,
        ChangeAction action,
        List<String> fields) {
    public ChangeHead {
        fields = List.copyOf(fields);
    }
}
