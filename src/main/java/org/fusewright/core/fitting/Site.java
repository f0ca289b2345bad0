package org.fusewright.core.fitting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntPredicate;

/** The items of one location, in the job's order, with their figures in arrays. */
final class Site {

    /** The forms that take an item; equal for equal forms. */
    static final class Takers {
        /** Counted in the order in which the items ask for them. */
        final int number;

        final int count;
        final boolean[] forms;

        private Takers(int number, boolean[] forms) {
            this.number = number;
            this.forms = forms;
            int count = 0;
            for (boolean taken : forms) {
                count += taken ? 1 : 0;
            }
            this.count = count;
        }

        boolean isWithin(Takers others) {
            for (int f = 0; f < forms.length; f++) {
                if (forms[f] && !others.forms[f]) {
                    return false;
                }
            }
            return true;
        }
    }

    final String location;
    final List<FittingItem> items;
    final FormTable table;
    final boolean[] relay;
    final int[] width;
    final long[] current;
    final Takers[] takers;
    final List<Takers> allTakers = new ArrayList<>();

    /** Index of the item that this one likes to sit next to; -1 for none at this location. */
    final int[] besides;

    final int totalWidth;
    final int relays;

    Site(String location, List<FittingItem> items, FormTable table) {
        int count = items.size();
        this.location = location;
        this.items = items;
        this.table = table;
        relay = new boolean[count];
        width = new int[count];
        current = new long[count];
        takers = new Takers[count];
        besides = new int[count];
        Map<String, Integer> indexes = new HashMap<>();
        int widths = 0;
        int pairs = 0;
        for (int i = 0; i < count; i++) {
            FittingItem item = items.get(i);
            indexes.put(item.id(), i);
            relay[i] = item.width() == Width.RELAY_PAIR;
            width[i] = item.width().positions();
            current[i] = MicroAmperes.of(item.currentA());
            takers[i] = takersOf(item);
            widths += width[i];
            pairs += relay[i] ? 1 : 0;
        }
        for (int i = 0; i < count; i++) {
            int self = i;
            besides[i] = items.get(i).besides().map(indexes::get).filter(b -> b != self).orElse(-1);
        }
        totalWidth = widths;
        relays = pairs;
    }

    /** Some of its items, in blocks without a name. */
    Site withoutNamed(List<Integer> some) {
        return new Site(location, some.stream().map(items::get).toList(), table.withoutNamed());
    }

    private Takers takersOf(FittingItem item) {
        boolean[] forms = new boolean[table.size()];
        for (int f = 0; f < forms.length; f++) {
            forms[f] = table.takes(f, item);
        }
        for (Takers known : allTakers) {
            if (Arrays.equals(known.forms, forms)) {
                return known;
            }
        }
        Takers takers = new Takers(allTakers.size(), forms);
        allTakers.add(takers);
        return takers;
    }

    int size() {
        return items.size();
    }

    boolean takes(int form, int item) {
        return takers[item].forms[form];
    }

    /** Most current that items can bring into one block. */
    long largestCurrent(int form) {
        return largestCurrent(form, i -> true);
    }

    /** Most current that items taken by no form but these can bring into one block. */
    long largestCurrent(int form, Takers within) {
        return largestCurrent(form, i -> takers[i].isWithin(within));
    }

    private long largestCurrent(int form, IntPredicate counts) {
        long[] found = new long[size()];
        int count = 0;
        for (int i = 0; i < size(); i++) {
            if (takes(form, i) && counts.test(i)) {
                found[count++] = current[i];
            }
        }
        Arrays.sort(found, 0, count);
        long sum = 0;
        for (int i = Math.max(0, count - table.positions[form]); i < count; i++) {
            sum += found[i];
        }
        return sum;
    }
}
