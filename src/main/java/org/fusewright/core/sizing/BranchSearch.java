package org.fusewright.core.sizing;

import org.fusewright.core.sizing.LoadPath.Size;
import org.jspecify.annotations.Nullable;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The cheapest sizes of a circuit's branches behind one trunk: depth first, cheap sizes first, and
 * no further where even the cheapest rest would cost more than what is found already. Which splice
 * joins the branches depends on all of them, so only a whole choice can be judged.
 */
final class BranchSearch {

    /**
     * Far more than jobs ask for, as the first whole choice mostly does. A circuit with very many
     * different loads whose splice suits none of them ends here, with the best found so far.
     */
    private static final int MOST_WHOLE_CHOICES = 1_000;

    /** Judges a whole choice. */
    interface Judge {

        /** What it costs in millionths of the currency; negative when it misses a limit. */
        long costOf(Size[] branches);
    }

    /**
     * One size for the branches from one load to another.
     *
     * @param lostV what one of them loses
     * @param micros what all of them cost
     */
    record Option(Size size, double lostV, long micros) {}

    private final int[] firsts;
    private final List<List<Option>> options = new ArrayList<>();
    private final Size[] branches;
    private final Judge judge;
    private long[] restMicros = new long[0];
    private Size @Nullable [] best;
    private long bestMicros = Long.MAX_VALUE;
    private int wholeChoices;

    /**
     * @param firsts index of the first branch of each group that is sized alike
     */
    BranchSearch(int[] firsts, int branches, Judge judge) {
        this.firsts = firsts;
        this.branches = new Size[branches];
        this.judge = judge;
    }

    /** Adds the sizes that the next group may have. */
    void offer(List<Option> cheapestFirst) {
        options.add(cheapestFirst);
    }

    /**
     * @param fixedMicros what every choice costs on top at least
     * @return nothing when no choice keeps every limit
     */
    Size @Nullable [] findCheapest(long fixedMicros) {
        restMicros = new long[options.size() + 1];
        for (int group = options.size() - 1; group >= 0; group--) {
            if (options.get(group).isEmpty()) {
                return null;
            }
            restMicros[group] = restMicros[group + 1] + options.get(group).getFirst().micros();
        }
        descend(0, fixedMicros);
        return best;
    }

    private void descend(int group, long soFarMicros) {
        if (group == options.size()) {
            wholeChoices++;
            long micros = judge.costOf(branches);
            if (micros >= 0 && micros < bestMicros) {
                best = branches.clone();
                bestMicros = micros;
            }
            return;
        }
        int end = group + 1 < firsts.length ? firsts[group + 1] : branches.length;
        for (Option option : options.get(group)) {
            long micros = soFarMicros + option.micros();
            if (micros + restMicros[group + 1] >= bestMicros
                    || wholeChoices >= MOST_WHOLE_CHOICES) {
                return;
            }
            Arrays.fill(branches, firsts[group], end, option.size());
            descend(group + 1, micros);
        }
    }
}
