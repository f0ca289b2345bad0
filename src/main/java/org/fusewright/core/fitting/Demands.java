package org.fusewright.core.fitting;

import org.fusewright.core.fitting.Site.Takers;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * What every sufficient set of blocks gives, as rows "the blocks together bring at least so much":
 * positions and relay pairs for the items that only some forms take, current for them, and room for
 * items above a current of which a block carries only a few. Each row is necessary; together they
 * are not sufficient, which only {@link Packing} decides.
 */
final class Demands {

    private static final int MOST_ROWS = 24;
    private static final int MOST_STEPS = 16;

    private final Site site;
    private final List<double[]> gives = new ArrayList<>();
    private final List<Double> needs = new ArrayList<>();

    /** What one block of a form brings, by row and form. */
    final double[][] give;

    final double[] need;

    Demands(Site site, int sparePositions) {
        this.site = site;
        FormTable table = site.table;
        add(site.totalWidth + sparePositions, f -> table.positions[f]);
        for (Takers takers : site.allTakers) {
            if (isOfNamedBlock(takers)) {
                continue;
            }
            int[] members = membersWithin(takers);
            int widths = 0;
            int relays = 0;
            for (int i : members) {
                widths += site.width[i];
                relays += site.relay[i] ? 1 : 0;
            }
            if (takers.count < table.size()) {
                add(widths, f -> takers.forms[f] ? table.positions[f] : 0);
            }
            if (relays > 0) {
                add(relays, f -> takers.forms[f] ? table.pairs[f] : 0);
            }
            if (currentBinds(takers)) {
                addCurrents(takers, members);
            }
        }
        give = gives.toArray(double[][]::new);
        need = needs.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** What a named block must hold was looked at when its forms were picked. */
    private boolean isOfNamedBlock(Takers takers) {
        for (int f = site.table.firstUnnamed(); f < takers.forms.length; f++) {
            if (takers.forms[f]) {
                return false;
            }
        }
        return true;
    }

    private int[] membersWithin(Takers takers) {
        int[] members = new int[site.size()];
        int count = 0;
        for (int i = 0; i < site.size(); i++) {
            if (site.takers[i].isWithin(takers)) {
                members[count++] = i;
            }
        }
        return Arrays.copyOf(members, count);
    }

    private boolean currentBinds(Takers takers) {
        for (int f = 0; f < site.table.size(); f++) {
            if (takers.forms[f] && site.largestCurrent(f, takers) > site.table.limit[f]) {
                return true;
            }
        }
        return false;
    }

    private void addCurrents(Takers takers, int[] members) {
        FormTable table = site.table;
        long sum = 0;
        for (int i : members) {
            sum += site.current[i];
        }
        // A hair less and a hair more than exact, so that rounding never cuts off a true answer.
        add(
                sum * 1e-6 * (1 - 1e-12),
                f ->
                        takers.forms[f]
                                ? Math.min(table.limit[f], site.largestCurrent(f, takers))
                                        * 1e-6
                                        * (1 + 1e-12)
                                : 0);
        long[] steps = Arrays.stream(members).mapToLong(i -> site.current[i]).distinct().toArray();
        Arrays.sort(steps);
        int stride = (steps.length + MOST_STEPS - 1) / MOST_STEPS;
        for (int s = 0; s < steps.length; s += stride) {
            long least = steps[s];
            int[] heavy = Arrays.stream(members).filter(i -> site.current[i] >= least).toArray();
            add(heavy.length, f -> takers.forms[f] ? mostOf(heavy, f) : 0);
        }
    }

    /** At most so many of the items go into one block of the form. */
    private int mostOf(int[] items, int form) {
        int devices = 0;
        int relays = 0;
        long[] currents = new long[items.length];
        for (int i : items) {
            if (site.takes(form, i)) {
                currents[devices + relays] = site.current[i];
                if (site.relay[i]) {
                    relays++;
                } else {
                    devices++;
                }
            }
        }
        int room = site.table.positions[form];
        int seatedDevices = Math.min(devices, room);
        int seatedRelays =
                Math.min(Math.min(relays, site.table.pairs[form]), (room - seatedDevices) / 2);
        Arrays.sort(currents, 0, devices + relays);
        int count = 0;
        long sum = 0;
        while (count < seatedDevices + seatedRelays) {
            sum += currents[count];
            if (sum > site.table.limit[form]) {
                break;
            }
            count++;
        }
        return count;
    }

    private interface Gives {
        double of(int form);
    }

    private void add(double needed, Gives of) {
        if (needed <= 0 || gives.size() == MOST_ROWS) {
            return;
        }
        double[] row = new double[site.table.size()];
        for (int f = 0; f < row.length; f++) {
            row[f] = Math.min(of.of(f), needed);
        }
        for (int k = 0; k < gives.size(); k++) {
            if (Arrays.equals(gives.get(k), row)) {
                needs.set(k, Math.max(needs.get(k), needed));
                return;
            }
        }
        gives.add(row);
        needs.add(needed);
    }
}
