package org.fusewright.core.quote;

import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.job.Circuit;
import org.fusewright.core.job.Job;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.kit.Kit;
import org.joda.money.Money;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * Looks for the cheapest design of a job that passes, by the kind of device on each circuit. A
 * design without a failing check beats one with, then fewer cautions win, then the lower price: a
 * caution that no choice of devices takes away decides nothing.
 *
 * <p>It starts from the best of four whole kits (as asked, all fuses, all manual-reset, all
 * solid-state) and changes one circuit at a time for as long as that helps. Blocks and caps are
 * shared, so a still better design may need two changes at once: what it finds is the best that
 * single changes lead to, not proven least.
 */
final class CheapestDesign {
    /** Keeps the largest job within a few seconds. */
    private static final int MOST_PLANS = 600;

    private record Candidate(Job job, Kit kit, long fails, long cautions, Money price) {
        private static final Comparator<Candidate> BEST_FIRST =
                Comparator.comparingLong(Candidate::fails)
                        .thenComparingLong(Candidate::cautions)
                        .thenComparing(Candidate::price);

        boolean beats(Candidate other) {
            return BEST_FIRST.compare(this, other) < 0;
        }
    }

    private final Function<Job, Kit> planner;
    private final Function<Kit, Money> pricing;
    private int plans;

    private CheapestDesign(Function<Job, Kit> planner, Function<Kit, Money> pricing) {
        this.planner = planner;
        this.pricing = pricing;
    }

    /**
     * @param asked the kit of the job as it is
     */
    static Kit find(Job job, Kit asked, Function<Job, Kit> planner, Function<Kit, Money> pricing) {
        CheapestDesign search = new CheapestDesign(planner, pricing);
        Candidate best = search.candidate(job, asked);
        for (DeviceKind kind : DeviceKind.values()) {
            best = search.better(best, VariantKind.withDevices(job, kind));
        }
        return search.improve(best).kit();
    }

    private Candidate improve(Candidate start) {
        Candidate best = start;
        boolean improved = true;
        while (improved && plans < MOST_PLANS) {
            Candidate before = best;
            for (int c = 0; c < best.job().circuits().size(); c++) {
                for (DeviceKind kind : DeviceKind.values()) {
                    best = better(best, withKind(best.job(), c, kind));
                }
            }
            improved = best != before;
        }
        return best;
    }

    private Candidate better(Candidate best, Job job) {
        if (plans >= MOST_PLANS || job.equals(best.job())) {
            return best;
        }
        return plan(job).filter(candidate -> candidate.beats(best)).orElse(best);
    }

    /** Empty when the kinds have nothing in stock for a circuit. */
    private Optional<Candidate> plan(Job job) {
        plans++;
        try {
            return Optional.of(candidate(job, planner.apply(job)));
        } catch (MalformedJobException nothingStocked) {
            return Optional.empty();
        }
    }

    private Candidate candidate(Job job, Kit kit) {
        return new Candidate(
                job,
                kit,
                count(kit, Verdict.FAIL),
                count(kit, Verdict.CAUTION),
                pricing.apply(kit));
    }

    private static long count(Kit kit, Verdict verdict) {
        return kit.checks().stream().filter(check -> check.verdict() == verdict).count();
    }

    private static Job withKind(Job job, int circuit, DeviceKind kind) {
        List<Circuit> circuits = new ArrayList<>(job.circuits());
        circuits.set(circuit, circuits.get(circuit).withDevices(List.of(kind)));
        return job.withCircuits(circuits);
    }
}
