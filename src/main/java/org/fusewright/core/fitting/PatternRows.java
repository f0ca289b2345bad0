package org.fusewright.core.fitting;

import org.fusewright.core.fitting.Rest.Limit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The rows of the linear programme over patterns: each item is held once, each named block is used
 * once, all blocks together have enough positions, and what each limit says.
 */
final class PatternRows {

    private static final int NONE = -1;

    private final FormTable table;
    private final ItemKinds kinds;
    private final Rest rest;
    private final int firstNamed;
    private final int positions;
    private final int[] least;
    private final int[] most;
    private final List<List<Integer>> limitsOf = new ArrayList<>();
    private final boolean[] closed;
    private final int count;

    PatternRows(FormTable table, ItemKinds kinds, Rest rest) {
        this.table = table;
        this.kinds = kinds;
        this.rest = rest;
        firstNamed = kinds.size();
        int next = firstNamed + table.names.size();
        positions = rest.positions() > 0 ? next++ : NONE;
        closed = new boolean[table.size()];
        for (int f = 0; f < closed.length; f++) {
            limitsOf.add(new ArrayList<>());
            closed[f] = table.isNamed(f) && !rest.open()[table.nameOf(f)];
        }
        least = new int[rest.limits().size()];
        most = new int[least.length];
        for (int l = 0; l < least.length; l++) {
            Limit limit = rest.limits().get(l);
            least[l] = limit.least() > 0 ? next++ : NONE;
            most[l] = limit.most() != Limit.ANY ? next++ : NONE;
            limitsOf.get(limit.form()).add(l);
            closed[limit.form()] |= limit.kind() == Limit.BLOCKS && limit.most() == 0;
        }
        count = next;
    }

    /** Whether no block of the form may be used. */
    boolean isClosed(int form) {
        return closed[form];
    }

    int namedRow(int form) {
        return firstNamed + table.nameOf(form);
    }

    /**
     * @param rest with the same limits as that of the rows, perhaps lower
     */
    double[] rightSide(Rest rest) {
        double[] side = new double[count];
        for (int k = 0; k < kinds.size(); k++) {
            side[k] = rest.items()[k];
        }
        for (int b = 0; b < table.names.size(); b++) {
            side[firstNamed + b] = rest.open()[b] ? 1 : 0;
        }
        set(side, positions, Math.max(0, rest.positions()));
        for (int l = 0; l < least.length; l++) {
            set(side, least[l], rest.limits().get(l).least());
            set(side, most[l], rest.limits().get(l).most());
        }
        return side;
    }

    private static void set(double[] side, int row, int to) {
        if (row != NONE) {
            side[row] = to;
        }
    }

    /** Columns for what is held too often, and for the room that each limit leaves. */
    void addSlack(ColumnProgramme programme, double unit) {
        long dearestPlug = Arrays.stream(table.plug).max().orElse(0);
        for (int k = 0; k < kinds.size(); k++) {
            // What is held once too often is left out of a block, for the plugs in its place.
            addSlack(programme, k, -1, dearestPlug * kinds.width[k] / unit);
        }
        addSlack(programme, positions, -1, 0);
        for (int l = 0; l < least.length; l++) {
            addSlack(programme, least[l], -1, 0);
            addSlack(programme, most[l], 1, 0);
        }
    }

    private static void addSlack(
            ColumnProgramme programme, int row, double coefficient, double cost) {
        if (row != NONE) {
            programme.add(
                    new ColumnProgramme.Column(new int[] {row}, new double[] {coefficient}, cost));
        }
    }

    ColumnProgramme.Column column(Pattern pattern, double unit) {
        int f = pattern.form();
        int held = pattern.kinds().length;
        int[] rows = Arrays.copyOf(pattern.kinds(), held + 2 + 2 * limitsOf.get(f).size());
        double[] coefficients = new double[rows.length];
        int n = 0;
        while (n < held) {
            coefficients[n] = pattern.counts()[n];
            n++;
        }
        if (table.isNamed(f)) {
            rows[n] = namedRow(f);
            coefficients[n++] = 1;
        }
        if (positions != NONE) {
            rows[n] = positions;
            coefficients[n++] = table.positions[f];
        }
        for (int l : limitsOf.get(f)) {
            int here = pattern.count(rest.limits().get(l).kind());
            for (int row : new int[] {least[l], most[l]}) {
                if (here > 0 && row != NONE) {
                    rows[n] = row;
                    coefficients[n++] = here;
                }
            }
        }
        return new ColumnProgramme.Column(
                Arrays.copyOf(rows, n), Arrays.copyOf(coefficients, n), pattern.price() / unit);
    }

    /** Makes prices of rows such that they bound from below: each has the sign of its row. */
    void setSigns(long[] prices) {
        if (positions != NONE) {
            prices[positions] = Math.max(0, prices[positions]);
        }
        for (int l = 0; l < least.length; l++) {
            if (least[l] != NONE) {
                prices[least[l]] = Math.max(0, prices[least[l]]);
            }
            if (most[l] != NONE) {
                prices[most[l]] = Math.min(0, prices[most[l]]);
            }
        }
    }

    /** What all right sides are worth, but for those of the named blocks. */
    long worthOfRightSide(long[] prices) {
        long worth = 0;
        for (int k = 0; k < kinds.size(); k++) {
            worth += prices[k] * rest.items()[k];
        }
        if (positions != NONE) {
            worth += prices[positions] * rest.positions();
        }
        for (int l = 0; l < least.length; l++) {
            if (least[l] != NONE) {
                worth += prices[least[l]] * rest.limits().get(l).least();
            }
            if (most[l] != NONE) {
                worth += prices[most[l]] * rest.limits().get(l).most();
            }
        }
        return worth;
    }

    /** What an item of each kind is worth in a block of the form. */
    long[] values(int form, long[] prices) {
        long[] values = Arrays.copyOf(prices, kinds.size());
        for (int l : limitsOf.get(form)) {
            int kind = rest.limits().get(l).kind();
            if (kind != Limit.BLOCKS) {
                values[kind] += worthOfLimit(l, prices);
            }
        }
        return values;
    }

    /** What a block of the form is worth, whatever it holds. */
    long worthOfBlock(int form, long[] prices) {
        long worth = positions == NONE ? 0 : prices[positions] * table.positions[form];
        for (int l : limitsOf.get(form)) {
            if (rest.limits().get(l).kind() == Limit.BLOCKS) {
                worth += worthOfLimit(l, prices);
            }
        }
        return worth;
    }

    private long worthOfLimit(int limit, long[] prices) {
        return (least[limit] == NONE ? 0 : prices[least[limit]])
                + (most[limit] == NONE ? 0 : prices[most[limit]]);
    }
}
