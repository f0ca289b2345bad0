package org.fusewright.core.fitting;

import org.fusewright.core.fitting.Site.Takers;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The items of a site, those that no rule tells apart counted as one kind. Where no block could be
 * too weak for what fills it, currents tell nothing apart.
 */
final class ItemKinds {

    private record Kind(boolean relay, Takers takers, long current) {}

    /** The items of each kind; a kind of less current comes first. */
    final List<List<Integer>> members = new ArrayList<>();

    final boolean[] relay;
    final int[] width;
    final long[] current;
    final Takers[] takers;

    ItemKinds(Site site) {
        boolean currents = anyBlockTooWeak(site);
        Map<Kind, List<Integer>> byKind = new HashMap<>();
        List<Kind> kinds = new ArrayList<>();
        for (int i = 0; i < site.size(); i++) {
            Kind kind = new Kind(site.relay[i], site.takers[i], currents ? site.current[i] : 0);
            List<Integer> known = byKind.get(kind);
            if (known == null) {
                known = new ArrayList<>();
                byKind.put(kind, known);
                members.add(known);
                kinds.add(kind);
            }
            known.add(i);
        }
        int[] order =
                Indexes.sorted(kinds.size(), Comparator.comparingLong(k -> kinds.get(k).current));
        List<List<Integer>> unordered = List.copyOf(members);
        int count = kinds.size();
        relay = new boolean[count];
        width = new int[count];
        current = new long[count];
        takers = new Takers[count];
        for (int k = 0; k < count; k++) {
            Kind kind = kinds.get(order[k]);
            members.set(k, unordered.get(order[k]));
            relay[k] = kind.relay;
            width[k] = kind.relay ? 2 : 1;
            current[k] = kind.current;
            takers[k] = kind.takers;
        }
    }

    private static boolean anyBlockTooWeak(Site site) {
        for (int f = 0; f < site.table.size(); f++) {
            if (site.largestCurrent(f) > site.table.limit[f]) {
                return true;
            }
        }
        return false;
    }

    int size() {
        return members.size();
    }

    int count(int kind) {
        return members.get(kind).size();
    }
}
