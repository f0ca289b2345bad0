package org.fusewright.core.order;

import org.fusewright.core.order.PartSupply.Choice;
import org.jspecify.annotations.Nullable;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Chooses one way for each part so that the orders at given suppliers reach their minimums at least
 * cost: part by part, keeping of all ways to the same values only the cheapest one, and of those
 * only the ones that a bound does not rule out. When there are too many, the most promising are
 * kept, and the bound of those given up tells by how much the answer could be off.
 */
final class LabelSearch {

    /**
     * @param quantities null when nothing cheaper than the limit was found
     * @param floor nothing cheaper than the limit costs less than this
     */
    record Outcome(int @Nullable [][] quantities, long cost, double floor) {}

    /**
     * How much of the search is kept: ways of a part, partial answers, and steps in all.
     *
     * @param share of the room between bound and limit that each part's ways may take
     */
    record Effort(int ways, int labels, long steps, double share) {}

    /** One way to buy a part: its cost, and what of it goes to each supplier that matters. */
    private record Option(int[] quantities, long cost, double weighted, long[] values) {}

    /** A partial answer: what it costs, what the orders reach, and how it came about. */
    private record Label(
            long cost, long[] values, double bound, @Nullable Label before, Option last) {}

    private static final double TINY = 1e-5;
    private static final int MOST_ATTEMPTS = 12;
    private static final int STEPS_FOR_A_LABEL = 30;

    private final Market market;
    private final double[] weights;
    private final Effort effort;
    private final Budget budget;
    private final double limit;
    private final List<Integer> matter = new ArrayList<>();
    private final List<List<Option>> options = new ArrayList<>();
    private final Integer[] order;
    private double givenUp = Double.POSITIVE_INFINITY;

    private LabelSearch(
            Market market,
            Relaxation relaxed,
            boolean[] forced,
            long limit,
            Effort effort,
            Budget budget) {
        this.market = market;
        this.weights = relaxed.weights();
        this.effort = effort;
        this.budget = budget;
        this.limit = limit + TINY;
        if (effort.share() < 1) {
            givenUp = relaxed.bound() + (limit - relaxed.bound()) * effort.share();
        }
        for (int s = 0; s < forced.length; s++) {
            if (forced[s]) {
                matter.add(s);
            }
        }
        listOptions(relaxed);
        dropSuppliersThatAreSure();
        order = new Integer[options.size()];
        Arrays.setAll(order, p -> p);
        Arrays.sort(order, Comparator.comparingInt(p -> options.get(p).size()));
    }

    /** Looks for the cheapest answer that costs at most {@code limit}. */
    static Outcome search(
            Market market,
            Relaxation relaxed,
            boolean[] forced,
            long limit,
            Effort effort,
            Budget budget) {
        return new LabelSearch(market, relaxed, forced, limit, effort, budget).search();
    }

    private void listOptions(Relaxation relaxed) {
        long[] worth = new long[market.suppliers().size()];
        matter.forEach(s -> worth[s] = market.minimums()[s]);
        for (int p = 0; p < market.parts().size(); p++) {
            PartSupply part = market.parts().get(p);
            Choice cheapest = relaxed.choices()[p];
            List<Choice> ways = List.of(cheapest);
            if (matter.stream().anyMatch(part::isOfferedBy)) {
                ways = listWays(part, cheapest, relaxed.bound(), worth);
            }
            options.add(cheapestByValues(part, ways));
        }
    }

    /** All ways within the limit, or within a lower one when those are too many. */
    private List<Choice> listWays(PartSupply part, Choice cheapest, double bound, long[] worth) {
        double room = (limit - bound) * effort.share();
        for (int attempt = 0; attempt < MOST_ATTEMPTS; attempt++) {
            Optional<List<Choice>> ways =
                    part.listWays(
                            weights, cheapest.weighted() + room, worth, effort.ways(), budget);
            if (ways.isPresent()) {
                List<Choice> all = new ArrayList<>(ways.get());
                all.add(cheapest);
                return all;
            }
            room /= 3;
            givenUp = Math.min(givenUp, bound + room);
        }
        givenUp = bound;
        return List.of(cheapest);
    }

    /** Of ways that give each supplier that matters the same, only the cheapest one. */
    private List<Option> cheapestByValues(PartSupply part, List<Choice> ways) {
        Map<List<Long>, Option> byValues = new HashMap<>();
        for (Choice way : ways) {
            long[] all = new long[market.suppliers().size()];
            part.addValues(way.quantities(), all);
            long[] values = matter.stream().mapToLong(s -> all[s]).toArray();
            Option option = new Option(way.quantities(), Market.sum(all), way.weighted(), values);
            byValues.merge(
                    Arrays.stream(values).boxed().toList(),
                    option,
                    (a, b) -> b.cost() < a.cost() ? b : a);
        }
        return byValues.values().stream()
                .sorted(
                        Comparator.comparingDouble(Option::weighted)
                                .thenComparingLong(Option::cost))
                .toList();
    }

    /** An order that reaches its minimum whatever is chosen need not be counted. */
    private void dropSuppliersThatAreSure() {
        List<Integer> kept = new ArrayList<>();
        for (int m = 0; m < matter.size(); m++) {
            int at = m;
            long least =
                    options.stream()
                            .mapToLong(
                                    of ->
                                            of.stream()
                                                    .mapToLong(o -> o.values()[at])
                                                    .min()
                                                    .orElse(0))
                            .sum();
            if (least < market.minimums()[matter.get(m)]) {
                kept.add(m);
            }
        }
        if (kept.size() == matter.size()) {
            return;
        }
        options.replaceAll(of -> of.stream().map(o -> reduced(o, kept)).toList());
        List<Integer> suppliers = kept.stream().map(matter::get).toList();
        matter.clear();
        matter.addAll(suppliers);
    }

    private static Option reduced(Option option, List<Integer> kept) {
        long[] values = kept.stream().mapToLong(m -> option.values()[m]).toArray();
        return new Option(option.quantities(), option.cost(), option.weighted(), values);
    }

    private Outcome search() {
        double rest = 0;
        for (List<Option> of : options) {
            rest += leastWeighted(of);
        }
        long[] nothing = new long[matter.size()];
        Option none = new Option(new int[0], 0, 0, nothing);
        List<Label> labels = List.of(new Label(0, nothing, rest, null, none));
        long ways = options.stream().filter(of -> of.size() > 1).mapToLong(List::size).sum();
        long steps = Math.min(effort.steps(), Math.max(0, budget.left()) / STEPS_FOR_A_LABEL);
        int width = Math.clamp(steps / Math.max(1, ways), 20, effort.labels());
        for (int p : order) {
            rest -= leastWeighted(options.get(p));
            labels = narrowed(extended(labels, options.get(p), rest), width);
        }
        Label best = null;
        for (Label label : labels) {
            if (isEnough(label) && (best == null || label.cost() < best.cost())) {
                best = label;
            }
        }
        if (best == null) {
            return new Outcome(null, Long.MAX_VALUE, givenUp);
        }
        return new Outcome(quantitiesOf(best), best.cost(), Math.min(givenUp, best.cost()));
    }

    private static double leastWeighted(List<Option> of) {
        return of.stream().mapToDouble(Option::weighted).min().orElse(0);
    }

    private List<Label> extended(List<Label> labels, List<Option> of, double rest) {
        Map<List<Long>, Label> byValues = new HashMap<>();
        budget.spend((long) STEPS_FOR_A_LABEL * labels.size() * of.size());
        for (Label label : labels) {
            for (Option option : of) {
                long cost = label.cost() + option.cost();
                long[] values = new long[matter.size()];
                double bound = cost + rest;
                for (int m = 0; m < values.length; m++) {
                    long minimum = market.minimums()[matter.get(m)];
                    values[m] = Math.min(minimum, label.values()[m] + option.values()[m]);
                    bound += (1 - weights[matter.get(m)]) * (minimum - values[m]);
                }
                if (bound <= limit) {
                    Label next = new Label(cost, values, bound, label, option);
                    byValues.merge(
                            Arrays.stream(values).boxed().toList(),
                            next,
                            (a, b) -> b.cost() < a.cost() ? b : a);
                }
            }
        }
        return new ArrayList<>(byValues.values());
    }

    private List<Label> narrowed(List<Label> labels, int width) {
        if (labels.size() <= width) {
            return labels;
        }
        labels.sort(
                Comparator.comparingDouble(Label::bound)
                        .thenComparing(Label::values, Arrays::compare));
        givenUp = Math.min(givenUp, labels.get(width).bound());
        return new ArrayList<>(labels.subList(0, width));
    }

    private boolean isEnough(Label label) {
        for (int m = 0; m < matter.size(); m++) {
            if (label.values()[m] < market.minimums()[matter.get(m)]) {
                return false;
            }
        }
        return true;
    }

    private int[][] quantitiesOf(Label last) {
        int[][] quantities = new int[options.size()][];
        Label label = last;
        for (int i = order.length - 1; i >= 0; i--) {
            quantities[order[i]] = label.last().quantities().clone();
            if (label.before() != null) {
                label = label.before();
            }
        }
        return quantities;
    }
}
