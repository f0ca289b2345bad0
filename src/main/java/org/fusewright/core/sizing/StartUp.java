package org.fusewright.core.sizing;

import org.fusewright.core.job.Inrush;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The current while everything behind one device starts at once: for each start-up duration, those
 * that still start at their multiple and the others at their running current. A start is taken as a
 * rectangle, the multiple held for the whole duration.
 *
 * @param steps empty when nothing draws more at its start
 * @param peakA the highest of them, or the running current
 */
record StartUp(List<Step> steps, double peakA) {

    /** So much current for so long. */
    record Step(double currentA, double durationS) {}

    StartUp {
        steps = List.copyOf(steps);
    }

    static StartUp of(List<SingleLoad> loads) {
        double[] durationsMs = new double[loads.size()];
        int surging = 0;
        double runningA = 0;
        for (SingleLoad load : loads) {
            runningA += load.runningA();
            if (surges(load.load().inrush())) {
                durationsMs[surging++] = load.load().inrush().ms();
            }
        }
        Arrays.sort(durationsMs, 0, surging);
        List<Step> steps = new ArrayList<>(surging);
        for (int i = 0; i < surging; i++) {
            double ms = durationsMs[i];
            if (i == 0 || ms > durationsMs[i - 1]) {
                steps.add(new Step(currentAfter(ms, loads), ms / 1000));
            }
        }
        double peakA = runningA;
        for (Step step : steps) {
            peakA = Math.max(peakA, step.currentA());
        }
        return new StartUp(steps, peakA);
    }

    /** One of several starts, never two at once, while a further current runs. */
    static StartUp eitherOf(List<StartUp> starts, List<Double> alongsideA) {
        List<Step> steps = new ArrayList<>();
        double peakA = 0;
        for (int i = 0; i < starts.size(); i++) {
            double restA = alongsideA.get(i);
            for (Step step : starts.get(i).steps()) {
                steps.add(new Step(step.currentA() + restA, step.durationS()));
            }
            peakA = Math.max(peakA, starts.get(i).peakA() + restA);
        }
        return new StartUp(steps, peakA);
    }

    /** The start of a share of the loads. */
    StartUp times(double share) {
        List<Step> shared = new ArrayList<>();
        for (Step step : steps) {
            shared.add(new Step(share * step.currentA(), step.durationS()));
        }
        return new StartUp(shared, share * peakA);
    }

    private static double currentAfter(double ms, List<SingleLoad> loads) {
        double sumA = 0;
        for (SingleLoad load : loads) {
            Inrush inrush = load.load().inrush();
            sumA += load.runningA() * (inrush.ms() >= ms ? inrush.multiple() : 1);
        }
        return sumA;
    }

    private static boolean surges(Inrush inrush) {
        return inrush.multiple() > 1 && inrush.ms() > 0;
    }

    /** Whether a device holds through every step at its earliest. */
    boolean isHeldBy(TimeCurrentBand band) {
        for (Step step : steps) {
            if (band.earliestS(step.currentA()) < step.durationS()) {
                return false;
            }
        }
        return true;
    }
}
