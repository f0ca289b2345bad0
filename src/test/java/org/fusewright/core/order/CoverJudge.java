package org.fusewright.core.order;

import com.google.ortools.Loader;
import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;

import org.fusewright.core.catalog.Offer;
import org.fusewright.core.catalog.Offer.PriceBreak;
import org.joda.money.Money;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The least cost of a cover from an independent solver: OR-Tools CP-SAT. States the rules anew:
 * whole packs at the price of the break that they reach, each line rounded half up, orders of
 * nothing or of the minimum at least. Shares nothing with the search but the task. One worker, a
 * fixed seed and a limit that is counted and not timed: the same task gives the same answer.
 */
final class CoverJudge {

    /**
     * @param cost of the cheapest cover found, in minor units
     * @param bound no cover costs less; equal to the cost when that is proven
     */
    record Verdict(long cost, long bound) {

        boolean isProven() {
            return cost == bound;
        }
    }

    private static final long ROUNDING = 1_000_000;

    private final CpModel model = new CpModel();
    private final Map<String, LinearExprBuilder> values = new TreeMap<>();
    private final Map<String, BoolVar> orders = new HashMap<>();
    private final CoverTask task;

    private CoverJudge(CoverTask task) {
        this.task = task;
    }

    /**
     * @param known the cost of a cover that there is: the solver looks for nothing dearer
     * @param effort the solver's own measure of it, some seconds
     */
    static Verdict judge(CoverTask task, long known, double effort) {
        Loader.loadNativeLibraries();
        return new CoverJudge(task).solve(known, effort);
    }

    private Verdict solve(long known, double effort) {
        for (Offer offer : task.offers()) {
            values.computeIfAbsent(offer.supplier(), _ -> LinearExpr.newBuilder());
            orders.computeIfAbsent(offer.supplier(), _ -> model.newBoolVar(""));
        }
        for (Need need : task.needs()) {
            LinearExprBuilder covered = LinearExpr.newBuilder();
            task.offers().stream()
                    .filter(offer -> offer.part().equals(need.part()))
                    .forEach(offer -> addOffer(offer, need.quantity(), covered));
            model.addGreaterOrEqual(covered, need.quantity());
        }
        LinearExprBuilder total = LinearExpr.newBuilder();
        values.forEach(
                (supplier, value) -> {
                    model.addGreaterOrEqual(
                            value, LinearExpr.term(orders.get(supplier), minimum(supplier)));
                    total.add(value);
                });
        model.addLessOrEqual(total, known);
        model.minimize(total);
        CpSolver solver = new CpSolver();
        solver.getParameters()
                .setNumWorkers(1)
                .setRandomSeed(1)
                .setLinearizationLevel(2)
                .setMaxDeterministicTime(effort);
        CpSolverStatus status = solver.solve(model);
        if (status == CpSolverStatus.INFEASIBLE || status == CpSolverStatus.MODEL_INVALID) {
            throw new AssertionError("the cover known breaks a rule: " + status);
        }
        long bound = (long) Math.ceil(solver.bestObjectiveBound() - 1e-6);
        return status == CpSolverStatus.UNKNOWN
                ? new Verdict(known, bound)
                : new Verdict(Math.round(solver.objectiveValue()), bound);
    }

    private long minimum(String supplier) {
        Money least = task.minimums().get(supplier);
        return least == null ? 0 : least.getAmountMinorLong();
    }

    private void addOffer(Offer offer, int need, LinearExprBuilder covered) {
        List<PriceBreak> breaks = offer.breaks();
        LinearExprBuilder choices = LinearExpr.newBuilder();
        for (int b = 0; b < breaks.size(); b++) {
            BigDecimal price = breaks.get(b).unitPrice().getAmount().movePointRight(2);
            int pack = offer.packSize();
            long first = packs(breaks.get(b).fromQuantity(), pack);
            long last = Math.max(first, packs(mostUseful(offer, need, price), pack));
            if (b + 1 < breaks.size()) {
                last = Math.min(last, packs(breaks.get(b + 1).fromQuantity(), pack) - 1);
            }
            if (first > last) {
                continue;
            }
            BoolVar is = model.newBoolVar("");
            IntVar count = model.newIntVar(0, last, "");
            model.addGreaterOrEqual(count, LinearExpr.term(is, first));
            model.addLessOrEqual(count, LinearExpr.term(is, last));
            model.addLessOrEqual(is, orders.get(offer.supplier()));
            choices.add(is);
            covered.addTerm(count, pack);
            values.get(offer.supplier()).add(cost(count, price, pack, last));
        }
        model.addLessOrEqual(choices, 1);
    }

    /** More covers nothing and lifts no order that is below its minimum. */
    private long mostUseful(Offer offer, int need, BigDecimal price) {
        long filling =
                price.signum() == 0
                        ? 0
                        : BigDecimal.valueOf(minimum(offer.supplier()) + 1)
                                .divide(price, 0, RoundingMode.CEILING)
                                .longValueExact();
        return Math.max(need, filling);
    }

    private static long packs(long quantity, int pack) {
        return (quantity + pack - 1) / pack;
    }

    /** Quantity times price, rounded half up: twice the amount lies within one of the product. */
    private IntVar cost(IntVar count, BigDecimal price, int pack, long last) {
        long micros = price.movePointRight(6).longValueExact();
        IntVar cost = model.newIntVar(0, micros * pack * last / ROUNDING + 1, "");
        if (micros * pack % ROUNDING == 0) {
            model.addEquality(cost, LinearExpr.term(count, micros * pack / ROUNDING));
            return cost;
        }
        IntVar below = model.newIntVar(0, ROUNDING - 1, "");
        model.addEquality(
                LinearExpr.newBuilder().addTerm(cost, ROUNDING).add(below).build(),
                LinearExpr.newBuilder().addTerm(count, micros * pack).add(ROUNDING / 2).build());
        return cost;
    }
}
