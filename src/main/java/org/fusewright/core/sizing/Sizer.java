package org.fusewright.core.sizing;

import org.fusewright.core.check.Check;
import org.fusewright.core.job.Feed;
import org.fusewright.core.job.Job;
import org.fusewright.core.job.RelayUse;
import org.fusewright.core.job.ResolvedCircuit;
import org.fusewright.core.job.ResolvedFeed;
import org.fusewright.core.job.ResolvedJob;
import org.fusewright.core.quantity.Ohms;
import org.fusewright.core.sizing.FeedDemand.Service;
import org.fusewright.core.sizing.FeedPlan.Outlet;

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
 * <p>A device must break what its feed lets through, and a feed's wires follow from the devices
 * behind it. So devices are chosen first as if any short could be broken, and again with the
 * prospective currents of the feeds that came out, until nothing changes. Every job gets an answer;
 * what does not meet a limit is said by a check.
 */
public final class Sizer {

    /** A choice can only grow with a round, so few rounds do; the checks judge the last one. */
    private static final int MOST_ROUNDS = 4;

    private final ResolvedJob resolved;
    private final Job job;
    private final Loom loom;
    private final Map<String, CircuitDemand> demands = new LinkedHashMap<>();
    private final Map<String, List<CircuitDemand>> borrowers = new HashMap<>();

    private Sizer(ResolvedJob resolved) {
        this.resolved = resolved;
        this.job = resolved.job();
        this.loom = new Loom(resolved);
    }

    public static SizedJob size(ResolvedJob job) {
        return new Sizer(job).size();
    }

    private SizedJob size() {
        sumCurrents();
        Map<String, DeviceChoice.Choice> devices = chooseDevices(Map.of());
        Map<String, FeedPlan> feeds = sizeFeeds(devices);
        for (int round = 1; round < MOST_ROUNDS; round++) {
            Map<String, DeviceChoice.Choice> again = chooseDevices(prospectiveAt(feeds));
            boolean settled = sameDevices(devices, again);
            devices = again;
            if (settled) {
                break;
            }
            feeds = sizeFeeds(devices);
        }
        Map<String, CircuitPlan> circuits = sizeBranches(devices, feeds);
        return answer(circuits, feeds, check(circuits, feeds));
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

    private DeviceChoice.Demand deviceDemand(CircuitDemand owner) {
        List<CircuitDemand> all = behind(owner);
        boolean momentary = true;
        for (CircuitDemand demand : all) {
            momentary &= demand.resolved().circuit().isMomentary();
        }
        return new DeviceChoice.Demand(
                owner.resolved().devices(),
                carriedA(owner),
                momentary,
                all.size() == 1 ? owner.startUp() : startUpOf(all),
                owner.resolved().circuit().ratingA().isPresent());
    }

    /**
     * @param prospectiveA by circuit; not asked for where it is not known
     */
    private Map<String, DeviceChoice.Choice> chooseDevices(Map<String, Double> prospectiveA) {
        Map<String, DeviceChoice.Choice> choices = new HashMap<>();
        for (CircuitDemand demand : demands.values()) {
            if (ownsDevice(demand)) {
                choices.put(
                        demand.id(),
                        DeviceChoice.choose(
                                deviceDemand(demand),
                                job,
                                prospectiveA.getOrDefault(demand.id(), 0.0)));
            }
        }
        return choices;
    }

    private static boolean sameDevices(
            Map<String, DeviceChoice.Choice> before, Map<String, DeviceChoice.Choice> after) {
        for (Map.Entry<String, DeviceChoice.Choice> entry : before.entrySet()) {
            if (entry.getValue().device() != after.get(entry.getKey()).device()) {
                return false;
            }
        }
        return true;
    }

    private Map<String, Double> prospectiveAt(Map<String, FeedPlan> feeds) {
        Map<String, Double> prospective = new HashMap<>();
        for (FeedPlan feed : feeds.values()) {
            for (Outlet outlet : feed.outlets()) {
                if (!outlet.service().isTrigger()) {
                    prospective.put(
                            outlet.service().circuit().id(),
                            FaultCurrent.highestA(
                                    job.supply(), new Ohms(outlet.limb().leastOhm())));
                }
            }
        }
        return prospective;
    }

    private Map<String, FeedPlan> sizeFeeds(Map<String, DeviceChoice.Choice> devices) {
        Map<String, FeedPlan> feeds = new LinkedHashMap<>();
        for (ResolvedFeed feed : resolved.feeds()) {
            FeedDemand demand = feedDemand(feed, devices);
            if (!demand.services().isEmpty()) {
                feeds.put(feed.id(), FeedSizing.size(loom, resolved.stock(), demand));
            }
        }
        return feeds;
    }

    private FeedDemand feedDemand(ResolvedFeed feed, Map<String, DeviceChoice.Choice> devices) {
        List<Service> services = new ArrayList<>();
        List<CircuitDemand> onFeed = new ArrayList<>();
        double runningA = 0;
        double largestA = 0;
        double strictestPercent = Double.POSITIVE_INFINITY;
        for (CircuitDemand demand : demands.values()) {
            ResolvedCircuit circuit = demand.resolved();
            if (circuit.feed().id().equals(feed.id())) {
                onFeed.add(demand);
                strictestPercent = Math.min(strictestPercent, circuit.circuit().maxDropPercent());
                if (ownsDevice(demand)) {
                    double carriedA = carriedA(demand);
                    services.add(new Service(circuit, false, carriedA, fromFeedM(circuit)));
                    runningA += carriedA;
                    largestA = Math.max(largestA, devices.get(demand.id()).device().ratingA());
                }
            }
            Optional<RelayUse> relay = circuit.circuit().relay();
            if (relay.isPresent() && relay.get().triggerFrom().equals(feed.id())) {
                double coilA = demand.coilA(job.supply());
                services.add(new Service(circuit, true, coilA, relay.get().triggerM()));
                runningA += coilA;
            }
        }
        return new FeedDemand(
                feed,
                services,
                runningA,
                largestA,
                strictestPercent,
                feedStartUp(feed, onFeed, runningA));
    }

    /**
     * A switched feed starts everything at once when the key is turned; behind a permanent one each
     * device's circuits start by themselves while all others run (common practice).
     */
    private StartUp feedStartUp(
            ResolvedFeed feed, List<CircuitDemand> onFeed, double feedRunningA) {
        if (feed.feed().terminal().equals(Feed.SWITCHED)) {
            return startUpOf(onFeed);
        }
        List<StartUp> starts = new ArrayList<>();
        List<Double> alongsideA = new ArrayList<>();
        for (CircuitDemand demand : onFeed) {
            if (ownsDevice(demand)) {
                starts.add(startUpOf(behind(demand)));
                alongsideA.add(feedRunningA - carriedA(demand));
            }
        }
        return StartUp.eitherOf(starts, alongsideA);
    }

    private double fromFeedM(ResolvedCircuit circuit) {
        return job.findLocation(circuit.circuit().location())
                .map(location -> location.fromFeedM())
                .orElse(0.0);
    }

    private Map<String, CircuitPlan> sizeBranches(
            Map<String, DeviceChoice.Choice> devices, Map<String, FeedPlan> feeds) {
        BranchSizing.Outlets outlets = outletsOf(feeds);
        Map<String, CircuitPlan> plans = new HashMap<>();
        for (CircuitDemand demand : demands.values()) {
            if (ownsDevice(demand)) {
                BranchSizing branch =
                        new BranchSizing(
                                loom,
                                demand,
                                borrowers.getOrDefault(demand.id(), List.of()),
                                devices.get(demand.id()),
                                carriedA(demand),
                                outlets);
                for (CircuitPlan plan : branch.size()) {
                    plans.put(plan.id(), plan);
                }
            }
        }
        return plans;
    }

    private static BranchSizing.Outlets outletsOf(Map<String, FeedPlan> feeds) {
        Map<String, Outlet> ofDevices = new HashMap<>();
        Map<String, Outlet> ofTriggers = new HashMap<>();
        for (FeedPlan feed : feeds.values()) {
            for (Outlet outlet : feed.outlets()) {
                (outlet.service().isTrigger() ? ofTriggers : ofDevices)
                        .put(outlet.service().circuit().id(), outlet);
            }
        }
        return new BranchSizing.Outlets(ofDevices, ofTriggers);
    }

    private List<Check> check(Map<String, CircuitPlan> circuits, Map<String, FeedPlan> feeds) {
        List<Check> checks = new ArrayList<>();
        BranchSizing.Outlets outlets = outletsOf(feeds);
        for (CircuitDemand demand : demands.values()) {
            CircuitPlan plan = circuits.get(demand.id());
            checks.addAll(
                    new CircuitChecks(job, plan)
                            .list(
                                    plan.ownsDevice()
                                            ? Optional.of(deviceDemand(demand))
                                            : Optional.empty(),
                                    Optional.ofNullable(outlets.ofTriggers().get(demand.id()))));
        }
        for (FeedPlan feed : feeds.values()) {
            checks.addAll(FeedChecks.list(job, feed));
        }
        if (!demands.isEmpty()) {
            checks.add(ChargingBalance.check(demands.values(), job.supply()));
        }
        LightingSeparation.check(demands.values()).ifPresent(checks::add);
        return checks;
    }

    private List<CircuitPlan> behind(CircuitDemand owner, Map<String, CircuitPlan> plans) {
        List<CircuitPlan> all = new ArrayList<>(1);
        for (CircuitDemand demand : behind(owner)) {
            all.add(plans.get(demand.id()));
        }
        return all;
    }

    private SizedJob answer(
            Map<String, CircuitPlan> plans, Map<String, FeedPlan> feedPlans, List<Check> checks) {
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
                                    ? Optional.of(new ProtectionStudy(job, behind(demand, plans)))
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
                            plan.map(FeedPlan::main),
                            plan.map(FeedPlan::holder),
                            plan.map(p -> LaidLead.listLeads(p.leads())).orElse(List.of()),
                            plan.map(FeedPlan::splices).orElse(List.of()),
                            plan.map(FeedPlan::why)
                                    .orElse(List.of("Nothing hangs on this feed."))));
        }
        return new SizedJob(circuits, feeds, checks);
    }
}
