package org.fusewright.core.fitting;

import java.util.ArrayList;
import java.util.List;

/**
 * What of a site is still to be held, and in how many blocks.
 *
 * @param items left of each kind
 * @param open whether the named block is still to come, by number
 * @param positions that the blocks must have together, at least
 * @param limits one on each thing
 */
record Rest(int[] items, boolean[] open, int positions, List<Limit> limits) {

    /** How many blocks of a form there are, or how many items of a kind are in such blocks. */
    record Limit(int form, int kind, int least, int most) {

        /** For the kind where blocks are counted. */
        static final int BLOCKS = -1;

        static final int ANY = Integer.MAX_VALUE;

        boolean isOn(int otherForm, int otherKind) {
            return form == otherForm && kind == otherKind;
        }

        private Limit less(int count) {
            return new Limit(
                    form,
                    kind,
                    Math.max(0, least - count),
                    most == ANY ? ANY : Math.max(0, most - count));
        }
    }

    /** How many items are left. */
    int count() {
        int count = 0;
        for (int left : items) {
            count += left;
        }
        return count;
    }

    /** Whether a named block is still to come. */
    boolean isAnyOpen() {
        for (boolean named : open) {
            if (named) {
                return true;
            }
        }
        return false;
    }

    boolean isEmpty() {
        return count() == 0 && !isAnyOpen() && positions <= 0;
    }

    /** What is left when one block is filled so. */
    Rest without(Pattern pattern, FormTable table) {
        int[] fewer = items.clone();
        for (int n = 0; n < pattern.kinds().length; n++) {
            int k = pattern.kinds()[n];
            fewer[k] = Math.max(0, fewer[k] - pattern.counts()[n]);
        }
        boolean[] named = open.clone();
        if (table.isNamed(pattern.form())) {
            named[table.nameOf(pattern.form())] = false;
        }
        List<Limit> rest = new ArrayList<>();
        for (Limit limit : limits) {
            boolean counts = limit.form == pattern.form();
            rest.add(counts ? limit.less(pattern.count(limit.kind)) : limit);
        }
        return new Rest(fewer, named, positions - table.positions[pattern.form()], rest);
    }
}
