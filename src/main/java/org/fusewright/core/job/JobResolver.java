package org.fusewright.core.job;

import org.fusewright.core.catalog.Block;
import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.catalog.Relay;
import org.fusewright.core.catalog.Splice;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.pricing.Stock;
import org.fusewright.core.quantity.Figures;
import org.fusewright.core.quantity.WireColour;
import org.fusewright.core.quantity.WireSize;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Looks up in the stock what a job asks for; whatever is not there becomes a problem of the job.
 */
public final class JobResolver {

    /** Usual lead colours; by DIN 72551 practice (from memory): 30 red, 15 black, ground brown. */
    private static final WireColour PERMANENT_COLOUR = new WireColour("RD");

    private static final WireColour SWITCHED_COLOUR = new WireColour("BK");
    private static final WireColour GROUND_COLOUR = new WireColour("BN");

    private final Job job;
    private final Stock stock;
    private final String family;
    private final List<JobProblem> problems = new ArrayList<>();

    private JobResolver(Job job, Stock stock) {
        this.job = job;
        this.stock = stock;
        this.family = chooseFamily();
    }

    /**
     * @throws MalformedJobException naming every field that asks for something not stocked
     */
    public static ResolvedJob resolve(Job job, Stock stock) {
        JobResolver resolver = new JobResolver(job, stock);
        List<ResolvedFeed> feeds = resolver.resolveFeeds();
        List<ResolvedCircuit> circuits = resolver.resolveCircuits();
        resolver.requireSplices();
        if (!resolver.problems.isEmpty()) {
            throw new MalformedJobException(resolver.problems);
        }
        return new ResolvedJob(job, stock, feeds, circuits);
    }

    private String chooseFamily() {
        List<String> families = stock.listWireFamilies();
        Optional<String> asked = job.choices().wireFamily();
        if (asked.isPresent() && !families.contains(asked.get())) {
            problems.add(
                    new JobProblem(
                            "/choices/wireFamily",
                            "no wire family \""
                                    + asked.get()
                                    + "\" in stock; there are "
                                    + quoted(families)));
        }
        return asked.filter(families::contains).or(() -> stock.findUsualWireFamily()).orElse("");
    }

    private List<ResolvedFeed> resolveFeeds() {
        List<ResolvedFeed> feeds = new ArrayList<>();
        for (int i = 0; i < job.feeds().size(); i++) {
            resolveFeed(job.feeds().get(i), "/feeds/" + i).ifPresent(feeds::add);
        }
        return feeds;
    }

    private Optional<ResolvedFeed> resolveFeed(Feed feed, String at) {
        int before = problems.size();
        String feedFamily = feed.gauge().map(size -> familyWith(size, at)).orElse(family);
        Stocked stocked = stocked(feedFamily, usualColour(feed), feed.gauge());
        List<Device> mainDevices = stock.listMainDevices();
        if (mainDevices.isEmpty() || stocked.wires().isEmpty() && feed.gauge().isEmpty()) {
            problems.add(new JobProblem(at, "the catalog has no wire or no main device"));
        } else if (feed.ratingA().isPresent()) {
            mainDevices = ofRating(mainDevices, feed.ratingA().getAsDouble(), "main device", at);
        }
        if (stocked.wires().isEmpty() && problems.size() == before) {
            problems.add(notInColour(feed.gauge().orElseThrow(), usualColour(feed), at));
        }
        if (problems.size() > before) {
            return Optional.empty();
        }
        List<Wire> mainWires =
                feed.gauge().map(size -> ofSize(stocked.wires(), size)).orElse(stocked.wires());
        return Optional.of(new ResolvedFeed(feed, mainDevices, mainWires, stocked.wires()));
    }

    private List<ResolvedCircuit> resolveCircuits() {
        List<ResolvedCircuit> circuits = new ArrayList<>();
        for (int i = 0; i < job.circuits().size(); i++) {
            resolveCircuit(job.circuits().get(i), "/circuits/" + i).ifPresent(circuits::add);
        }
        return circuits;
    }

    /** A kit with more than one circuit, or with more than one load on one, may need splices. */
    private void requireSplices() {
        boolean needed =
                job.circuits().size() > 1
                        || job.circuits().stream().anyMatch(c -> c.loadCount() > 1);
        if (needed && stock.list(Splice.class).isEmpty()) {
            problems.add(new JobProblem("/circuits", "the catalog has no splice"));
        }
    }

    private Optional<ResolvedCircuit> resolveCircuit(Circuit circuit, String at) {
        int before = problems.size();
        Feed feed = feedOf(circuit);
        List<Device> devices = devicesFor(circuit, at);
        String circuitFamily = circuit.gauge().map(size -> familyWith(size, at)).orElse(family);
        WireColour asked = circuit.colour().orElse(usualColour(feed));
        Stocked stocked = stocked(circuitFamily, asked, circuit.gauge());
        List<Wire> trunk =
                circuit.gauge().map(size -> ofSize(stocked.wires(), size)).orElse(stocked.wires());
        Optional<Relay> relay = circuit.relay().flatMap(use -> relayFor(at));
        circuit.place().ifPresent(place -> requireBlock(place, at));
        circuit.relay()
                .flatMap(RelayUse::place)
                .ifPresent(place -> requireBlock(place, at + "/relay"));
        if (stocked.wires().isEmpty()) {
            problems.add(new JobProblem(at, "the catalog has no wire for this circuit"));
        } else if (trunk.isEmpty()) {
            problems.add(notInColour(circuit.gauge().orElseThrow(), asked, at));
        }
        if (problems.size() > before) {
            return Optional.empty();
        }
        return Optional.of(
                new ResolvedCircuit(
                        circuit,
                        feed,
                        devices,
                        trunk,
                        stocked.wires(),
                        stocked(circuitFamily, GROUND_COLOUR).wires(),
                        stocked.colour(),
                        stocked.colour().equals(asked) ? Optional.empty() : Optional.of(asked),
                        relay));
    }

    private Feed feedOf(Circuit circuit) {
        for (Feed feed : job.feeds()) {
            if (feed.id().equals(circuit.feed())) {
                return feed;
            }
        }
        throw new IllegalArgumentException("unchecked references");
    }

    private void requireBlock(BlockPlace place, String at) {
        List<String> blocks =
                stock.list(Block.class).stream().map(block -> block.number().value()).toList();
        place.part()
                .filter(part -> !blocks.contains(part))
                .ifPresent(
                        part ->
                                problems.add(
                                        new JobProblem(
                                                at + "/place/part",
                                                "no block \""
                                                        + part
                                                        + "\" in stock; there are "
                                                        + quoted(blocks))));
    }

    private List<Device> devicesFor(Circuit circuit, String at) {
        List<Device> candidates = new ArrayList<>();
        for (DeviceKind kind : circuit.devices()) {
            candidates.addAll(stock.listBlockDevices(kind));
        }
        if (candidates.isEmpty()) {
            problems.add(
                    new JobProblem(at + "/devices", "nothing stocked of kind " + kinds(circuit)));
            return List.of();
        }
        if (circuit.ratingA().isEmpty()) {
            return candidates;
        }
        return ofRating(
                candidates,
                circuit.ratingA().getAsDouble(),
                "device of kind " + kinds(circuit),
                at);
    }

    private List<Device> ofRating(List<Device> candidates, double fixed, String what, String at) {
        List<Device> ofRating = candidates.stream().filter(d -> d.ratingA() == fixed).toList();
        if (ofRating.isEmpty()) {
            String ratings = figures(candidates.stream().map(Device::ratingA));
            problems.add(
                    new JobProblem(
                            at + "/ratingA",
                            "no "
                                    + Figures.of(fixed, 6)
                                    + " A "
                                    + what
                                    + " in stock; there are "
                                    + ratings
                                    + " A"));
        }
        return ofRating;
    }

    private static String kinds(Circuit circuit) {
        return circuit.devices().stream().map(DeviceKind::code).collect(Collectors.joining(", "));
    }

    /**
     * The circuit's own family first; with none chosen for the job, any family that has the size.
     */
    private String familyWith(WireSize size, String at) {
        if (stock.listWireSizes(family).contains(size)) {
            return family;
        }
        if (job.choices().wireFamily().isEmpty()) {
            for (String other : stock.listWireFamilies()) {
                if (stock.listWireSizes(other).contains(size)) {
                    return other;
                }
            }
        }
        List<String> searched =
                job.choices().wireFamily().isEmpty() ? stock.listWireFamilies() : List.of(family);
        String sizes =
                searched.stream()
                        .flatMap(name -> stock.listWireSizes(name).stream())
                        .map(WireSize::label)
                        .distinct()
                        .collect(Collectors.joining(", "));
        problems.add(new JobProblem(at + "/gauge", size + " is not stocked; there are " + sizes));
        return family;
    }

    private static JobProblem notInColour(WireSize size, WireColour colour, String at) {
        return new JobProblem(at + "/gauge", size + " is not stocked in " + colour);
    }

    private Optional<Relay> relayFor(String at) {
        double nominalV = job.supply().nominalV();
        Optional<Relay> cheapest =
                stock.findCheapest(Relay.class, relay -> relay.coilV() == nominalV);
        if (cheapest.isEmpty()) {
            String voltages = figures(stock.list(Relay.class).stream().map(Relay::coilV));
            problems.add(
                    new JobProblem(
                            at + "/relay",
                            "no relay for "
                                    + Figures.of(nominalV)
                                    + " V in stock; there are "
                                    + (voltages.isEmpty()
                                            ? "none"
                                            : "relays for " + voltages + " V")));
        }
        return cheapest;
    }

    /** What is stocked, each once and rising. */
    private static String figures(Stream<Double> values) {
        return values.distinct()
                .sorted()
                .map(value -> Figures.of(value, 6))
                .collect(Collectors.joining(", "));
    }

    /** Wires in the colour asked for, else in its base colour, else in a usual one. */
    private Stocked stocked(String ofFamily, WireColour asked) {
        return stocked(ofFamily, asked, Optional.empty());
    }

    /** The same, in the first of these colours that is stocked in the size asked for. */
    private Stocked stocked(String ofFamily, WireColour asked, Optional<WireSize> size) {
        for (WireColour colour : List.of(asked, asked.base(), PERMANENT_COLOUR, SWITCHED_COLOUR)) {
            List<Wire> wires = stock.listWires(ofFamily, colour);
            if (size.map(wanted -> !ofSize(wires, wanted).isEmpty()).orElse(!wires.isEmpty())) {
                return new Stocked(colour, wires);
            }
        }
        return new Stocked(asked, List.of());
    }

    private record Stocked(WireColour colour, List<Wire> wires) {}

    private static WireColour usualColour(Feed feed) {
        return feed.terminal().equals(Feed.PERMANENT) ? PERMANENT_COLOUR : SWITCHED_COLOUR;
    }

    private static List<Wire> ofSize(List<Wire> wires, WireSize size) {
        return wires.stream().filter(wire -> wire.size().equals(size)).toList();
    }

    private static String quoted(List<String> names) {
        return names.stream().map(name -> "\"" + name + "\"").collect(Collectors.joining(", "));
    }
}
