package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.check.Check;
import org.fusewright.core.job.Feed;
import org.fusewright.core.job.Job;
import org.fusewright.core.job.RelayUse;
import org.fusewright.core.job.ResolvedCircuit;
import org.fusewright.core.job.ResolvedFeed;
import org.fusewright.core.job.ResolvedJob;
import org.fusewright.core.sizing.BranchSizing.Branch;
import org.fusewright.core.sizing.FeedDemand.Service;
import org.fusewright.core.sizing.FeedPlan.Outlet;
import org.fusewright.core.words.Phrase;
import org.jspecify.annotations.Nullable;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * From a resolved job to devices, leads, splices and checks: currents, then devices, then feeds,
 * then the leads behind each device, then the checks.
 *
 * <p>A device must break what its feed lets through and its leads start where the feed ends, while
 * a feed's wires follow from the devices behind it. So feeds are sized for devices that were
 * guessed first, then devices are chosen together with their leads, and both again until nothing
 * changes. Every job gets an answer; what does not meet a limit is said by a check.
 */
public final class Sizer {

    /** Most jobs settle in the first; after the last the devices stay and the checks judge. */
    private static final int MOST_ROUNDS = 4;

    private final ResolvedJob resolved;
    private final Job job;
    private final Loom loom;
    private final Map<String, CircuitDemand> demands = new LinkedHashMap<>();
    private final Map<String, List<CircuitDemand>> borrowers = new HashMap<>();
    private final Map<String, DeviceDemand> deviceDemands = new LinkedHashMap<>();

    private Sizer(ResolvedJob resolved, PlacedStock placed, KeptSizes kept) {
        this.resolved = resolved;
        this.job = resolved.job();
        this.loom = new Loom(resolved, placed, kept);
    }

    public static SizedJob size(ResolvedJob job) {
        return new Sizer(job, placedStock(job), KeptSizes.NONE).size();
    }

    /**
     * The same, sooner after other jobs in the same surroundings.
     *
     * @param placed of the job's stock
     */
    public static SizedJob size(ResolvedJob job, PlacedStocks placed) {
        return new Sizer(job, placed.in(job.job().surroundings()), KeptSizes.NONE).size();
    }

    /** Judges sizes that are settled already; chooses only where nothing is. */
    static SizedJob judge(ResolvedJob job, KeptSizes kept) {
        return new Sizer(job, placedStock(job), kept).size();
    }

    private static PlacedStock placedStock(ResolvedJob job) {
        return new PlacedStock(job.stock(), job.job().surroundings());
    }

    private SizedJob size() {
        sumCurrents();
        Map<String, Device> devices = guessDevices();
        Map<String, FeedPlan> feeds = sizeFeeds(devices);
        BranchSizing.Outlets outlets = outletsOf(feeds);
        Map<String, Branch> branches = Map.of();
        boolean settled = false;
        for (int round = 0; round < MOST_ROUNDS && !settled; round++) {
            branches = sizeBranches(outlets, Map.of());
            settled = isBuiltOn(devices, branches);
            if (!settled) {
                devices = devicesOf(branches);
                feeds = sizeFeeds(devices);
                outlets = outletsOf(feeds);
            }
        }
        if (!settled) {
            branches = sizeBranches(outlets, devices);
        }
        Map<String, CircuitPlan> circuits = plansOf(branches);
        VoltageLeft left = VoltageLeft.of(job.supply(), feeds.values());
        return answer(circuits, feeds, left, check(circuits, feeds, outlets, left));
    }

    private void sumCurrents() {
        for (ResolvedCircuit circuit : resolved.circuits()) {
            CircuitDemand demand = CircuitDemand.of(circuit, job.supply());
            demands.put(demand.id(), demand);
            circuit.circuit()
                    .contactFrom()
                    .ifPresent(
                            owner ->
                                    borrowers
                                            .computeIfAbsent(owner, o -> new ArrayList<>())
                                            .add(demand));
        }
        for (CircuitDemand demand : demands.values()) {
            if (ownsDevice(demand)) {
                deviceDemands.put(demand.id(), deviceDemand(demand));
            }
        }
    }

    private static boolean ownsDevice(CircuitDemand demand) {
        return demand.resolved().circuit().contactFrom().isEmpty();
    }

    /** The circuit itself and those that borrow its device. */
    private List<CircuitDemand> behind(CircuitDemand owner) {
        List<CircuitDemand> all = new ArrayList<>(1);
        all.add(owner);
        all.addAll(borrowers.getOrDefault(owner.id(), List.of()));
        return all;
    }

    private double carriedA(CircuitDemand owner) {
        double sumA = 0;
        for (CircuitDemand demand : behind(owner)) {
            sumA += demand.runningA();
        }
        return sumA;
    }

    private static StartUp startUpOf(List<CircuitDemand> circuits) {
        List<SingleLoad> loads = new ArrayList<>();
        for (CircuitDemand demand : circuits) {
            loads.addAll(demand.loads());
        }
        return StartUp.of(loads);
    }

    private DeviceDemand deviceDemand(CircuitDemand owner) {
        List<CircuitDemand> all = behind(owner);
        boolean momentary = true;
        for (CircuitDemand demand : all) {
            momentary &= demand.resolved().circuit().isMomentary();
        }
        return new DeviceDemand(
                loom.kept().deviceCandidates(owner.id(), owner.resolved().devices()),
                carriedA(owner),
                momentary,
                all.size() == 1 ? owner.startUp() : startUpOf(all),
                owner.resolved().circuit().ratingA().isPresent());
    }

    private Map<String, Device> guessDevices() {
        Map<String, Device> devices = new HashMap<>();
        for (Map.Entry<String, DeviceDemand> entry : deviceDemands.entrySet()) {
            devices.put(entry.getKey(), CircuitChoice.firstGuess(loom, entry.getValue()));
        }
        return devices;
    }

    private static boolean isBuiltOn(Map<String, Device> devices, Map<String, Branch> branches) {
        for (Map.Entry<String, Branch> entry : branches.entrySet()) {
            if (entry.getValue().device() != devices.get(entry.getKey())) {
                return false;
            }
        }
        return true;
    }

    private static Map<String, Device> devicesOf(Map<String, Branch> branches) {
        Map<String, Device> devices = new HashMap<>();
        for (Map.Entry<String, Branch> entry : branches.entrySet()) {
            devices.put(entry.getKey(), entry.getValue().device());
        }
        return devices;
    }

    private Map<String, FeedPlan> sizeFeeds(Map<String, Device> devices) {
        Map<String, FeedPlan> feeds = new LinkedHashMap<>();
        for (ResolvedFeed feed : resolved.feeds()) {
            FeedDemand demand = feedDemand(feed, devices);
            if (!demand.services().isEmpty()) {
                feeds.put(feed.id(), FeedSizing.size(loom, demand));
            }
        }
        return feeds;
    }

    private FeedDemand feedDemand(ResolvedFeed feed, Map<String, Device> devices) {
        List<Service> services = new ArrayList<>();
        List<CircuitDemand> onFeed = new ArrayList<>();
        double connectedA = 0;
        double largestCarriedA = 0;
        double largestA = 0;
        double strictestPercent = Double.POSITIVE_INFINITY;
        for (CircuitDemand demand : demands.values()) {
            ResolvedCircuit circuit = demand.resolved();
            if (circuit.feed().id().equals(feed.id())) {
                onFeed.add(demand);
                strictestPercent = Math.min(strictestPercent, circuit.circuit().maxDropPercent());
                if (ownsDevice(demand)) {
                    double carriedA = deviceDemands.get(demand.id()).carriedA();
                    services.add(new Service(circuit, false, carriedA, fromFeedM(circuit)));
                    connectedA += carriedA;
                    largestCarriedA = Math.max(largestCarriedA, carriedA);
                    largestA = Math.max(largestA, devices.get(demand.id()).ratingA());
                }
            }
            Optional<RelayUse> relay = circuit.circuit().relay();
            if (relay.isPresent() && relay.get().triggerFrom().equals(feed.id())) {
                double coilA = demand.coilA(job.supply());
                services.add(new Service(circuit, true, coilA, relay.get().triggerM()));
                connectedA += coilA;
                largestCarriedA = Math.max(largestCarriedA, coilA);
            }
        }
        Diversity diversity = new Diversity(feed.feed().diversity(), connectedA, largestCarriedA);
        return new FeedDemand(
                feed,
                services,
                diversity,
                largestA,
                strictestPercent,
                feedStartUp(feed, onFeed, diversity));
    }

    /**
     * A switched feed starts everything at once when the key is turned; behind a permanent one each
     * device's circuits start by themselves while all others run (common practice). Where not all
     * is ever drawn at once, the key starts that share of it, or one device's circuits beside the
     * share of the others.
     */
    private StartUp feedStartUp(
            ResolvedFeed feed, List<CircuitDemand> onFeed, Diversity diversity) {
        List<StartUp> starts = new ArrayList<>();
        List<Double> alongsideA = new ArrayList<>();
        if (feed.feed().terminal().equals(Feed.SWITCHED)) {
            StartUp all = startUpOf(onFeed);
            if (diversity.share() == 1) {
                return all;
            }
            starts.add(all.times(diversity.share()));
            alongsideA.add(0.0);
        }
        for (CircuitDemand demand : onFeed) {
            if (ownsDevice(demand)) {
                DeviceDemand device = deviceDemands.get(demand.id());
                starts.add(device.startUp());
                alongsideA.add(diversity.besideA(device.carriedA()));
            }
        }
        return StartUp.eitherOf(starts, alongsideA);
    }

    private double fromFeedM(ResolvedCircuit circuit) {
        return job.findLocation(circuit.circuit().location())
                .map(location -> location.fromFeedM())
                .orElse(0.0);
    }

    /**
     * @param settled devices that stay, by circuit; chosen where none is given
     */
    private Map<String, Branch> sizeBranches(
            BranchSizing.Outlets outlets, Map<String, Device> settled) {
        Map<String, Branch> branches = new HashMap<>();
        for (Map.Entry<String, DeviceDemand> entry : deviceDemands.entrySet()) {
            String id = entry.getKey();
            CircuitChoice choice =
                    new CircuitChoice(
                            loom,
                            demands.get(id),
                            borrowers.getOrDefault(id, List.of()),
                            entry.getValue(),
                            outlets);
            @Nullable Device device = settled.get(id);
            branches.put(id, device == null ? choice.choose() : choice.keep(device));
        }
        return branches;
    }

    private static Map<String, CircuitPlan> plansOf(Map<String, Branch> branches) {
        Map<String, CircuitPlan> plans = new HashMap<>();
        for (Branch branch : branches.values()) {
            for (CircuitPlan plan : branch.plans()) {
                plans.put(plan.id(), plan);
            }
        }
        return plans;
    }

    private static BranchSizing.Outlets outletsOf(Map<String, FeedPlan> feeds) {
        Map<String, Outlet> ofDevices = new HashMap<>();
        Map<String, Outlet> ofTriggers = new HashMap<>();
        Map<String, Device> mainDevices = new HashMap<>();
        for (FeedPlan feed : feeds.values()) {
            for (Outlet outlet : feed.outlets()) {
                (outlet.service().isTrigger() ? ofTriggers : ofDevices)
                        .put(outlet.service().circuit().id(), outlet);
                if (!outlet.service().isTrigger()) {
                    mainDevices.put(outlet.service().circuit().id(), feed.main());
                }
            }
        }
        return new BranchSizing.Outlets(ofDevices, ofTriggers, mainDevices);
    }

    private List<Check> check(
            Map<String, CircuitPlan> circuits,
            Map<String, FeedPlan> feeds,
            BranchSizing.Outlets outlets,
            VoltageLeft left) {
        List<Check> checks = new ArrayList<>();
        Map<String, ProtectedLead> pigtails = new HashMap<>();
        for (FeedPlan feed : feeds.values()) {
            pigtails.putAll(FeedChecks.pigtails(feed));
        }
        for (CircuitDemand demand : demands.values()) {
            CircuitPlan plan = circuits.get(demand.id());
            checks.addAll(
                    new CircuitChecks(loom, plan)
                            .list(
                                    plan.ownsDevice()
                                            ? Optional.of(deviceDemands.get(demand.id()))
                                            : Optional.empty(),
                                    Optional.ofNullable(pigtails.get(demand.id())),
                                    coilSource(demand, feeds, outlets, left)));
        }
        for (FeedPlan feed : feeds.values()) {
            checks.addAll(FeedChecks.list(loom, feed, branchesOf(feed, circuits)));
        }
        if (!demands.isEmpty()) {
            checks.addAll(ChargingBalance.list(demands.values(), job.supply()));
        }
        LightingSeparation.check(demands.values()).ifPresent(checks::add);
        return checks;
    }

    private List<Selectivity.Branch> branchesOf(FeedPlan feed, Map<String, CircuitPlan> circuits) {
        List<Selectivity.Branch> branches = new ArrayList<>();
        for (Outlet outlet : feed.outlets()) {
            if (!outlet.service().isTrigger()) {
                CircuitPlan plan = circuits.get(outlet.service().circuit().id());
                double restA = Math.max(0, feed.demand().runningA() - plan.carriedA());
                branches.add(
                        new Selectivity.Branch(
                                plan.id(),
                                plan.device(),
                                loom.bandInBlock(plan.device()),
                                restA,
                                plan.highestA()));
            }
        }
        return branches;
    }

    /** The voltage where the trigger lead of a circuit's relay starts. */
    private static VoltageLeft.Span coilSource(
            CircuitDemand demand,
            Map<String, FeedPlan> feeds,
            BranchSizing.Outlets outlets,
            VoltageLeft left) {
        Optional<RelayUse> relay = demand.resolved().circuit().relay();
        if (relay.isEmpty() || relay.get().isTriggeredByController()) {
            return left.atBattery();
        }
        return left.atTrigger(
                feeds.get(relay.get().triggerFrom()), outlets.ofTriggers().get(demand.id()));
    }

    private List<CircuitPlan> behind(CircuitDemand owner, Map<String, CircuitPlan> plans) {
        List<CircuitPlan> all = new ArrayList<>(1);
        for (CircuitDemand demand : behind(owner)) {
            all.add(plans.get(demand.id()));
        }
        return all;
    }

    private ProtectionStudy studyOf(
            CircuitPlan owner, Map<String, CircuitPlan> plans, Map<String, FeedPlan> feeds) {
        return new ProtectionStudy(
                job,
                behind(owner.demand(), plans),
                loom.bandInBlock(owner.device()),
                feeds.get(owner.demand().resolved().feed().id()));
    }

    private SizedJob answer(
            Map<String, CircuitPlan> plans,
            Map<String, FeedPlan> feedPlans,
            VoltageLeft left,
            List<Check> checks) {
        List<SizedCircuit> circuits = new ArrayList<>();
        for (CircuitDemand demand : demands.values()) {
            CircuitPlan plan = plans.get(demand.id());
            circuits.add(
                    new SizedCircuit(
                            demand.resolved(),
                            demand.runningA(),
                            plan.ownsDevice() ? plan.carriedA() : demand.runningA(),
                            demand.startUp().peakA(),
                            plan.ownsDevice() ? Optional.of(plan.device()) : Optional.empty(),
                            LaidLead.listLeads(plan.leads()),
                            plan.splices(),
                            plan.loads(),
                            plan.ownsDevice()
                                    ? Optional.of(studyOf(plan, plans, feedPlans))
                                    : Optional.empty(),
                            plan.why()));
        }
        List<SizedFeed> feeds = new ArrayList<>();
        for (ResolvedFeed feed : resolved.feeds()) {
            Optional<FeedPlan> plan = Optional.ofNullable(feedPlans.get(feed.id()));
            feeds.add(
                    new SizedFeed(
                            feed.feed(),
                            plan.map(p -> p.demand().runningA()).orElse(0.0),
                            plan.map(p -> p.demand().diversity().connectedA()).orElse(0.0),
                            plan.map(left::remainingOn),
                            plan.map(FeedPlan::main),
                            plan.map(FeedPlan::holder),
                            plan.map(p -> LaidLead.listLeads(p.leads())).orElse(List.of()),
                            plan.map(FeedPlan::splices).orElse(List.of()),
                            plan.map(FeedPlan::why)
                                    .orElse(List.of(Phrase.of("feed-choice.unused")))));
        }
        return new SizedJob(circuits, feeds, checks);
    }
}
