package org.fusewright.core.fitting;

import java.util.Arrays;
import java.util.Comparator;

/** Numbers that stand for the items, blocks or forms of a list. */
final class Indexes {

    private Indexes() {}

    /** 0 to below the count, in this order; equals stay as they were. */
    static int[] sorted(int count, Comparator<Integer> order) {
        Integer[] boxed = new Integer[count];
        for (int i = 0; i < count; i++) {
            boxed[i] = i;
        }
        Arrays.sort(boxed, order);
        int[] sorted = new int[count];
        for (int i = 0; i < count; i++) {
            sorted[i] = boxed[i];
        }
        return sorted;
    }
}
