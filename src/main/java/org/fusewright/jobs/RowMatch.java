package org.fusewright.jobs;

import tools.jackson.databind.JsonNode;

import java.util.Arrays;
import java.util.function.BiPredicate;

/** Tells which row of an earlier list each row of a later one is. */
final class RowMatch {
    private static final int NEW = -1;

    private final JsonNode before;
    private final JsonNode after;
    private final int[] earlier;
    private final int[] later;

    /**
     * Rows of one name are one row, then rows that say the same. Of what remains, rows at one place
     * are one row when no row came or went.
     */
    RowMatch(String list, JsonNode before, JsonNode after) {
        this.before = before;
        this.after = after;
        earlier = new int[after.size()];
        later = new int[before.size()];
        Arrays.fill(earlier, NEW);
        Arrays.fill(later, NEW);
        String key = JobFields.keyOf(list);
        pair((old, now) -> isNamedAlike(old.path(key), now.path(key)));
        pair((old, now) -> JobFields.isSame(list, old, now));
        if (before.size() == after.size()) {
            for (int i = 0; i < later.length; i++) {
                if (later[i] == NEW && earlier[i] == NEW) {
                    join(i, i);
                }
            }
        }
    }

    private static boolean isNamedAlike(JsonNode one, JsonNode other) {
        return one.isString() && !one.stringValue().isEmpty() && one.equals(other);
    }

    private void pair(BiPredicate<JsonNode, JsonNode> alike) {
        for (int now = 0; now < earlier.length; now++) {
            for (int old = 0; old < later.length && earlier[now] == NEW; old++) {
                if (later[old] == NEW && alike.test(before.get(old), after.get(now))) {
                    join(old, now);
                }
            }
        }
    }

    private void join(int old, int now) {
        earlier[now] = old;
        later[old] = now;
    }

    boolean isNew(int now) {
        return earlier[now] == NEW;
    }

    boolean isGone(int old) {
        return later[old] == NEW;
    }

    /** The index that a later row had before. */
    int earlier(int now) {
        return earlier[now];
    }

    /** The index that an earlier row has now. */
    int later(int old) {
        return later[old];
    }

    /** Whether the rows that stayed stand in another order now. */
    boolean isReordered() {
        int last = NEW;
        for (int old : earlier) {
            if (old != NEW && old < last) {
                return true;
            }
            last = Math.max(last, old);
        }
        return false;
    }
}
