package org.fusewright.changes;

import java.util.Optional;
import java.util.OptionalLong;

/**
 * Which changes are asked for; what is empty asks for all.
 *
 * @param record one record of the kind; only with a kind
 * @param by who made them, by the whole name
 * @param after where an earlier list ended
 */
public record ChangeQuery(
        Optional<RecordKind> kind,
        Optional<String> record,
        Optional<String> by,
        OptionalLong after,
        int limit) {
    public ChangeQuery {
        if (record.isPresent() && kind.isEmpty()) {
            throw new IllegalArgumentException("a record without its kind");
        }
    }

    ChangeQuery withLimit(int other) {
        return new ChangeQuery(kind, record, by, after, other);
    }
}
