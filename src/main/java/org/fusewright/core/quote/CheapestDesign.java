package org.fusewright.core.quote;

import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.job.ArrangementKind;
import org.fusewright.core.job.Circuit;
import org.fusewright.core.job.Job;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitCircuit;
import org.fusewright.core.words.Phrase;
import org.joda.money.BigMoney;
import org.jspecify.annotations.Nullable;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.ToLongFunction;

/**
 * The cheapest design of a job that passes, by the kind of device on each circuit. A design without
 * a failing check beats one with, then fewer cautions win, then the lower price: a caution that no
 * choice of devices takes away decides nothing.
 *
 * <p>A good design comes from whole kits of one kind and from changing one circuit at a time. Then
 * all others are ruled out, or planned: what a device brings with it ({@link KitShare}) follows
 * from its kind and from the largest rating on each feed, since that alone sizes the feeds. So for
 * each set of largest ratings the shares are learnt from few kits, and branch and bound adds them
 * up: the checks exactly, the price from below ({@link PriceFloor}). A share that once turns out
 * otherwise ends the proof, as does a search that takes too long.
 */
final class CheapestDesign {

    /**
     * @param isProven whether no choice of kinds is better
     */
    record Found(Kit kit, boolean isProven) {}

    /** Keeps the largest job within a few seconds. */
    private static final int MOST_PLANS = 900;

    /** Of those, what changing one circuit at a time may take. */
    private static final int MOST_IMPROVING = 400;

    private static final int MOST_CASES = 40;
    private static final int MOST_STEPS = 300_000;

    private static final DeviceKind[] KINDS = DeviceKind.values();

    /** A choice of kinds, planned and priced. */
    private record Design(
            List<DeviceKind> kinds,
            Kit kit,
            List<Double> largest,
            long fails,
            long cautions,
            long price) {
        private static final Comparator<Design> BEST_FIRST =
                Comparator.comparingLong(Design::fails)
                        .thenComparingLong(Design::cautions)
                        .thenComparingLong(Design::price);

        boolean beats(Design other) {
            return BEST_FIRST.compare(this, other) < 0;
        }
    }

    /** What is known under one set of largest ratings: the share of each circuit's kinds. */
    private record Case(
            List<Map<DeviceKind, KitShare>> shares,
            List<KitShare> feeds,
            Map<List<Object>, Verdict> unselective) {

        static Case of(int circuits) {
            List<Map<DeviceKind, KitShare>> shares = new ArrayList<>();
            for (int c = 0; c < circuits; c++) {
                shares.add(new TreeMap<>());
            }
            return new Case(shares, new ArrayList<>(), new HashMap<>());
        }
    }

    private final Job job;
    private final Function<Job, Kit> planner;
    private final Pricing pricing;

    /** The places of the circuits that own a device, in the job. */
    private final List<Integer> owners = new ArrayList<>();

    private final List<String> feeds;
    private final Map<List<DeviceKind>, Optional<Design>> planned = new HashMap<>();
    private final Map<List<Double>, Case> cases = new LinkedHashMap<>();
    private final Map<List<Object>, Double> ratings = new HashMap<>();
    private boolean isClear = true;
    private int plans;

    private CheapestDesign(Job job, Function<Job, Kit> planner, Pricing pricing) {
        this.job = job;
        this.planner = planner;
        this.pricing = pricing;
        Set<String> used = new TreeSet<>();
        for (int c = 0; c < job.circuits().size(); c++) {
            if (job.circuits().get(c).contactFrom().isEmpty()) {
                owners.add(c);
                used.add(job.circuits().get(c).feed());
            }
        }
        feeds = List.copyOf(used);
    }

    /**
     * @param asked the kit of the job as it is
     */
    static Found find(Job job, Kit asked, Function<Job, Kit> planner, Pricing pricing) {
        return new CheapestDesign(job, planner, pricing).find(asked);
    }

    private Found find(Kit asked) {
        Design best = design(List.of(), asked);
        for (DeviceKind kind : KINDS) {
            best = better(best, owners.stream().map(_ -> kind).toList());
        }
        best = improve(best);
        Proof proof = new Proof(best);
        boolean proven = proof.run();
        return new Found(proof.best.kit(), proven);
    }

    private Design improve(Design start) {
        Design best = start;
        boolean improved = true;
        while (improved && plans < MOST_IMPROVING) {
            Design before = best;
            for (int c = 0; c < owners.size() && plans < MOST_IMPROVING; c++) {
                for (DeviceKind kind : KINDS) {
                    best = better(best, with(kindsOf(best), c, kind));
                }
            }
            improved = best != before;
        }
        return best;
    }

    private static <T> List<T> with(List<T> list, int at, T item) {
        List<T> changed = new ArrayList<>(list);
        changed.set(at, item);
        return changed;
    }

    /** The kinds of the devices that the design has. */
    private List<DeviceKind> kindsOf(Design design) {
        return owners.stream()
                .map(c -> design.kit().circuits().get(c).sized().device().orElseThrow().kind())
                .toList();
    }

    private Design better(Design best, List<DeviceKind> kinds) {
        return plan(kinds).filter(design -> design.beats(best)).orElse(best);
    }

    /** Empty when a kind has nothing in stock for its circuit. */
    private Optional<Design> plan(List<DeviceKind> kinds) {
        Optional<Design> known = planned.get(kinds);
        if (known != null) {
            return known;
        }
        plans++;
        Optional<Design> design;
        try {
            design = Optional.of(design(kinds, planner.apply(withKinds(kinds))));
            learn(design.get());
        } catch (MalformedJobException nothingStocked) {
            design = Optional.empty();
        }
        planned.put(kinds, design);
        return design;
    }

    private Job withKinds(List<DeviceKind> kinds) {
        List<Circuit> circuits = new ArrayList<>(job.circuits());
        for (int o = 0; o < owners.size(); o++) {
            int c = owners.get(o);
            circuits.set(c, circuits.get(c).withDevices(List.of(kinds.get(o))));
        }
        return job.withCircuits(circuits);
    }

    private Design design(List<DeviceKind> kinds, Kit kit) {
        Double[] largest = new Double[feeds.size()];
        Arrays.fill(largest, 0.0);
        for (int c : owners) {
            int feed = feeds.indexOf(job.circuits().get(c).feed());
            largest[feed] = Math.max(largest[feed], ratingOf(kit.circuits().get(c)));
        }
        return new Design(
                kinds,
                kit,
                List.of(largest),
                count(kit, Verdict.FAIL),
                count(kit, Verdict.CAUTION),
                pricing.totalOf(kit).getAmountMinorLong());
    }

    private static double ratingOf(KitCircuit circuit) {
        return circuit.sized().device().orElseThrow().ratingA();
    }

    private static long count(Kit kit, Verdict verdict) {
        return kit.checks().stream().filter(check -> check.verdict() == verdict).count();
    }

    /** Notes the shares of a design, and whether they are the same as ever. */
    private void learn(Design design) {
        Case known = cases.computeIfAbsent(design.largest(), _ -> Case.of(owners.size()));
        Map<String, KitShare> shares = KitShare.listIn(design.kit());
        for (int o = 0; o < owners.size(); o++) {
            KitCircuit circuit = design.kit().circuits().get(owners.get(o));
            DeviceKind kind = design.kinds().get(o);
            KitShare share = shares.get(circuit.sized().id());
            KitShare before = known.shares().get(o).putIfAbsent(kind, share);
            Double rated = ratings.putIfAbsent(List.of(o, kind), ratingOf(circuit));
            isClear &= before == null || before.equals(share);
            isClear &= rated == null || rated.equals(ratingOf(circuit));
        }
        KitShare ofFeeds = shares.get(KitShare.FEEDS);
        if (known.feeds().isEmpty()) {
            known.feeds().add(ofFeeds);
        }
        isClear &= known.feeds().getFirst().equals(ofFeeds);
        for (Check check : design.kit().checks()) {
            if (check.code() == CheckCode.SELECTIVITY && check.verdict() != Verdict.PASS) {
                noteUnselective(check, design, known);
            }
        }
    }

    /** The check speaks of the worst of all devices on the feed: each design with it is as bad. */
    private void noteUnselective(Check check, Design design, Case known) {
        for (int o = 0; o < owners.size(); o++) {
            Circuit circuit = job.circuits().get(owners.get(o));
            if (circuit.feed().equals(check.subject().id())
                    && check.says() instanceof Phrase says
                    && says.values().getFirst().equals(circuit.id())) {
                known.unselective().put(List.of(o, design.kinds().get(o)), check.verdict());
            }
        }
    }

    /** Rules out all designs that are not better than the best known, and plans the others. */
    private final class Proof {

        private Design best;
        private int steps;
        private @Nullable PriceFloor floor;
        private double beside;

        Proof(Design best) {
            this.best = best;
        }

        boolean run() {
            if (owners.isEmpty()) {
                return true;
            }
            List<Map<DeviceKind, Double>> stocked = listRatings();
            List<List<Double>> all = listLargest(stocked);
            if (all.size() > MOST_CASES) {
                return false;
            }
            for (List<Double> largest : all) {
                learnCase(largest, stocked);
            }
            if (!isClear || plans >= MOST_PLANS || !readyFloor()) {
                return false;
            }
            for (List<Double> largest : all) {
                Case known = cases.get(largest);
                if (known != null && !new Search(this, largest, known).run()) {
                    return false;
                }
            }
            return isClear;
        }

        /** The rating of each circuit's device, by kind; without kinds that are not stocked. */
        private List<Map<DeviceKind, Double>> listRatings() {
            List<DeviceKind> start = kindsOf(best);
            List<Map<DeviceKind, Double>> stocked = new ArrayList<>();
            for (int o = 0; o < owners.size(); o++) {
                Map<DeviceKind, Double> ofCircuit = new TreeMap<>();
                for (DeviceKind kind : KINDS) {
                    Optional<Design> design = plan(with(start, o, kind));
                    if (design.isPresent()) {
                        best = design.get().beats(best) ? design.get() : best;
                        int c = owners.get(o);
                        ofCircuit.put(kind, ratingOf(design.get().kit().circuits().get(c)));
                    }
                }
                stocked.add(ofCircuit);
            }
            return stocked;
        }

        /** Each set of largest ratings that some choice of kinds leads to. */
        private List<List<Double>> listLargest(List<Map<DeviceKind, Double>> stocked) {
            List<List<Double>> all = List.of(List.of());
            for (String feed : feeds) {
                double least = 0;
                Set<Double> ofFeed = new TreeSet<>();
                for (int o = 0; o < owners.size(); o++) {
                    if (job.circuits().get(owners.get(o)).feed().equals(feed)) {
                        ofFeed.addAll(stocked.get(o).values());
                        double lowest =
                                stocked.get(o).values().stream()
                                        .min(Comparator.naturalOrder())
                                        .orElse(0.0);
                        least = Math.max(least, lowest);
                    }
                }
                List<List<Double>> longer = new ArrayList<>();
                for (List<Double> before : all) {
                    for (double rating : ofFeed) {
                        if (rating >= least) {
                            List<Double> next = new ArrayList<>(before);
                            next.add(rating);
                            longer.add(next);
                        }
                    }
                }
                all = longer;
            }
            return all;
        }

        /** Plans kits under these largest ratings until each circuit's kinds are known there. */
        private void learnCase(List<Double> largest, List<Map<DeviceKind, Double>> stocked) {
            for (int o = 0; o < owners.size(); o++) {
                for (DeviceKind kind : stocked.get(o).keySet()) {
                    Case known = cases.get(largest);
                    boolean isKnown = known != null && known.shares().get(o).containsKey(kind);
                    if (isKnown || plans >= MOST_PLANS || !isClear) {
                        continue;
                    }
                    Optional<List<DeviceKind>> kinds = chooseUnknown(o, kind, largest, stocked);
                    if (kinds.isPresent()) {
                        Optional<Design> design = plan(kinds.get());
                        isClear &= design.isPresent() && design.get().largest().equals(largest);
                        if (design.isPresent() && design.get().beats(best)) {
                            best = design.get();
                        }
                    }
                }
            }
        }

        /** A choice with one circuit's kind given; empty when no such choice has these ratings. */
        private Optional<List<DeviceKind>> chooseUnknown(
                int given,
                DeviceKind kind,
                List<Double> largest,
                List<Map<DeviceKind, Double>> stocked) {
            List<DeviceKind> chosen = new ArrayList<>();
            boolean[] reached = new boolean[feeds.size()];
            for (int o = 0; o < owners.size(); o++) {
                int feed = feedOf(o);
                Optional<DeviceKind> next =
                        o == given ? Optional.of(kind) : pick(o, largest, stocked.get(o));
                if (next.isEmpty() || stocked.get(o).get(next.get()) > largest.get(feed)) {
                    return Optional.empty();
                }
                chosen.add(next.get());
                reached[feed] |= stocked.get(o).get(next.get()).equals(largest.get(feed));
            }
            for (int o = 0; o < owners.size(); o++) {
                int feed = feedOf(o);
                if (!reached[feed] && o != given) {
                    for (Map.Entry<DeviceKind, Double> one : stocked.get(o).entrySet()) {
                        if (!reached[feed] && one.getValue().equals(largest.get(feed))) {
                            chosen.set(o, one.getKey());
                            reached[feed] = true;
                        }
                    }
                }
            }
            for (boolean one : reached) {
                if (!one) {
                    return Optional.empty();
                }
            }
            return Optional.of(chosen);
        }

        /** A kind that fits under the largest rating, rather one that is not known yet. */
        private Optional<DeviceKind> pick(
                int owner, List<Double> largest, Map<DeviceKind, Double> stocked) {
            @Nullable Case known = cases.get(largest);
            Optional<DeviceKind> any = Optional.empty();
            for (Map.Entry<DeviceKind, Double> one : stocked.entrySet()) {
                if (one.getValue() <= largest.get(feedOf(owner))) {
                    if (known == null || !known.shares().get(owner).containsKey(one.getKey())) {
                        return Optional.of(one.getKey());
                    }
                    any = Optional.of(one.getKey());
                }
            }
            return any;
        }

        /**
         * @return whether a bound can be given: that of the blocks comes from the lowest devices
         */
        private boolean readyFloor() {
            Map<PartNumber, Double> most = new HashMap<>();
            cases.values().forEach(known -> addMost(known, most));
            int spares = job.choices().spareFusesPerRating();
            most.replaceAll((_, count) -> count + spares * (owners.size() + feeds.size()));
            int items = owners.size() + job.choices().sparePositions() + 2 * job.circuits().size();
            floor = pricing.floor(most, items);
            Optional<Design> lowest = plan(lowestKinds());
            if (lowest.isEmpty()) {
                return false;
            }
            boolean isCheapest = job.choices().arrangement() == ArrangementKind.CHEAPEST;
            BigMoney blocks =
                    isCheapest
                            ? lowest.get().kit().fit().lowerBound()
                            : BigMoney.zero(job.currency());
            int locations = (int) job.circuits().stream().map(Circuit::location).distinct().count();
            beside = floor.beside(blocks, isCheapest ? locations : 0, job.circuits().size());
            return true;
        }

        /** No other case and no other kind needs more. */
        private void addMost(Case known, Map<PartNumber, Double> most) {
            Map<PartNumber, Double> sum = new HashMap<>(known.feeds().getFirst().needs());
            for (Map<DeviceKind, KitShare> kinds : known.shares()) {
                Map<PartNumber, Double> largest = new HashMap<>();
                kinds.values()
                        .forEach(
                                share ->
                                        share.needs()
                                                .forEach((p, n) -> largest.merge(p, n, Math::max)));
                largest.forEach((part, count) -> sum.merge(part, count, Double::sum));
            }
            sum.forEach((part, count) -> most.merge(part, count, Math::max));
        }

        /** Blocks for lower devices never cost more. */
        private List<DeviceKind> lowestKinds() {
            List<DeviceKind> lowest = new ArrayList<>(kindsOf(best));
            double[] heights = new double[owners.size()];
            Arrays.fill(heights, Double.POSITIVE_INFINITY);
            planned.values().stream()
                    .flatMap(Optional::stream)
                    .forEach(
                            design -> {
                                for (int o = 0; o < owners.size(); o++) {
                                    double height =
                                            design.kit()
                                                    .circuits()
                                                    .get(owners.get(o))
                                                    .sized()
                                                    .device()
                                                    .orElseThrow()
                                                    .heightMm();
                                    if (height < heights[o]) {
                                        heights[o] = height;
                                        lowest.set(o, design.kinds().get(o));
                                    }
                                }
                            });
            return lowest;
        }
    }

    private int feedOf(int owner) {
        return feeds.indexOf(job.circuits().get(owners.get(owner)).feed());
    }

    /** Branch and bound over the kinds under one set of largest ratings. */
    private final class Search {

        private record Option(DeviceKind kind, long fails, long cautions, double price) {}

        private final Proof proof;
        private final List<Double> largest;
        private final Case known;
        private final List<List<Option>> options = new ArrayList<>();
        private final long[] leastFails;
        private final long[] leastCautions;
        private final double[] leastPrice;
        private final List<DeviceKind> chosen = new ArrayList<>();

        Search(Proof proof, List<Double> largest, Case known) {
            this.proof = proof;
            this.largest = largest;
            this.known = known;
            int count = owners.size();
            leastFails = new long[count + 1];
            leastCautions = new long[count + 1];
            leastPrice = new double[count + 1];
            for (int o = 0; o < count; o++) {
                options.add(list(known.shares().get(o)));
            }
            for (int o = count - 1; o >= 0; o--) {
                leastFails[o] = leastFails[o + 1] + least(o, Option::fails);
                leastCautions[o] = leastCautions[o + 1] + least(o, Option::cautions);
                leastPrice[o] =
                        leastPrice[o + 1]
                                + options.get(o).stream()
                                        .mapToDouble(Option::price)
                                        .min()
                                        .orElse(0);
            }
        }

        private long least(int owner, ToLongFunction<Option> of) {
            return options.get(owner).stream().mapToLong(of).min().orElse(0);
        }

        private List<Option> list(Map<DeviceKind, KitShare> shares) {
            List<Option> all = new ArrayList<>();
            shares.forEach(
                    (kind, share) ->
                            all.add(
                                    new Option(
                                            kind,
                                            share.fails(),
                                            share.cautions(),
                                            proof.floor.of(share))));
            all.sort(
                    Comparator.comparingLong(Option::fails)
                            .thenComparingLong(Option::cautions)
                            .thenComparingDouble(Option::price));
            return all;
        }

        /** Whether it came to its end. */
        boolean run() {
            for (List<Option> of : options) {
                if (of.isEmpty()) {
                    return true;
                }
            }
            KitShare ofFeeds = known.feeds().getFirst();
            return choose(
                    ofFeeds.fails(), ofFeeds.cautions(), proof.floor.of(ofFeeds) + proof.beside);
        }

        private boolean choose(long fails, long cautions, double price) {
            int at = chosen.size();
            if (++proof.steps > MOST_STEPS) {
                return false;
            }
            if (isRuledOut(
                    fails + leastFails[at], cautions + leastCautions[at], price + leastPrice[at])) {
                return true;
            }
            if (at == owners.size()) {
                return tryOut();
            }
            for (Option option : options.get(at)) {
                chosen.add(option.kind());
                boolean ended =
                        choose(
                                fails + option.fails(),
                                cautions + option.cautions(),
                                price + option.price());
                chosen.removeLast();
                if (!ended) {
                    return false;
                }
            }
            return true;
        }

        private boolean isRuledOut(long fails, long cautions, double price) {
            Design best = proof.best;
            long leastFails = fails;
            long leastCautions = cautions;
            for (Verdict worst : listUnselective().values()) {
                leastFails += worst == Verdict.FAIL ? 1 : 0;
                leastCautions += worst == Verdict.CAUTION ? 1 : 0;
            }
            if (leastFails != best.fails()) {
                return leastFails > best.fails();
            }
            return leastCautions > best.cautions()
                    || (leastCautions == best.cautions()
                            && proof.floor.total(price) >= best.price());
        }

        /** By feed, what is known of its selectivity with the kinds that are chosen. */
        private Map<Integer, Verdict> listUnselective() {
            Map<Integer, Verdict> found = new HashMap<>();
            for (int o = 0; o < owners.size() && !known.unselective().isEmpty(); o++) {
                Verdict least = Verdict.FAIL;
                for (Option option : options.get(o)) {
                    if (o >= chosen.size() || option.kind() == chosen.get(o)) {
                        Verdict verdict =
                                known.unselective()
                                        .getOrDefault(List.of(o, option.kind()), Verdict.PASS);
                        least = verdict.compareTo(least) < 0 ? verdict : least;
                    }
                }
                found.merge(feedOf(o), least, (a, b) -> a.compareTo(b) > 0 ? a : b);
            }
            return found;
        }

        private boolean tryOut() {
            boolean[] reached = new boolean[feeds.size()];
            for (int o = 0; o < chosen.size(); o++) {
                Double rating = ratings.get(List.of(o, chosen.get(o)));
                reached[feedOf(o)] |= largest.get(feedOf(o)).equals(rating);
            }
            for (boolean one : reached) {
                if (!one) {
                    return true;
                }
            }
            if (plans >= MOST_PLANS) {
                return false;
            }
            Optional<Design> design = plan(List.copyOf(chosen));
            if (design.isPresent() && design.get().beats(proof.best)) {
                proof.best = design.get();
            }
            return isClear;
        }
    }
}
