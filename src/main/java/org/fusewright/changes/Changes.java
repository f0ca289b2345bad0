package org.fusewright.changes;

import org.fusewright.changes.store.ChangeRows;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Function;
import java.util.function.ToLongFunction;

/**
 * The trail of all changes. The database's triggers write it, whatever makes a change; here it can
 * be read, and nothing else.
 */
@Service
@Transactional(readOnly = true)
public class Changes {
    private final ChangeRows rows;

    Changes(ChangeRows rows) {
        this.rows = rows;
    }

    /** Newest first. */
    public ChangePage<Change> list(ChangeQuery query) {
        return page(query, rows::list, change -> change.head().id());
    }

    /** As above, without what was before and after. */
    public ChangePage<ChangeHead> listHeads(ChangeQuery query) {
        return page(query, rows::listHeads, ChangeHead::id);
    }

    private static <T> ChangePage<T> page(
            ChangeQuery query, Function<ChangeQuery, List<T>> rows, ToLongFunction<T> id) {
        List<T> found = rows.apply(query.withLimit(query.limit() + 1));
        List<T> page = found.stream().limit(query.limit()).toList();
        return new ChangePage<>(
                page,
                found.size() > query.limit()
                        ? OptionalLong.of(id.applyAsLong(page.getLast()))
                        : OptionalLong.empty());
    }

    public Optional<Change> find(long id) {
        return rows.find(id);
    }
}
