package org.fusewright.core.job;

import org.fusewright.core.catalog.Block;
import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.catalog.Relay;
import org.fusewright.core.catalog.Splice;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.pricing.Stock;
import org.fusewright.core.quantity.WireColour;
import org.fusewright.core.quantity.WireSize;
import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.fusewright.core.words.Unit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
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

    private static final int MOST_DECIMALS = 6;

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
                    JobProblem.of(
                            "/choices/wireFamily",
                            "wrong.no-family",
                            asked.get(),
                            quoted(families)));
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
            problems.add(JobProblem.of(at, "wrong.no-wire-or-main"));
        } else if (feed.ratingA().isPresent()) {
            double fixedA = feed.ratingA().getAsDouble();
            List<Device> stockedMains = mainDevices;
            mainDevices =
                    ofRating(
                            stockedMains,
                            fixedA,
                            at,
                            () ->
                                    Phrase.of(
                                            "wrong.no-main-rating",
                                            amperes(fixedA),
                                            ratings(stockedMains)));
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
            problems.add(JobProblem.of("/circuits", "wrong.no-splice"));
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
            problems.add(JobProblem.of(at, "wrong.no-wire"));
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
                                        JobProblem.of(
                                                at + "/place/part",
                                                "wrong.no-block",
                                                part,
                                                quoted(blocks))));
    }

    private List<Device> devicesFor(Circuit circuit, String at) {
        List<Device> candidates = new ArrayList<>();
        for (DeviceKind kind : circuit.devices()) {
            candidates.addAll(stock.listBlockDevices(kind));
        }
        if (candidates.isEmpty()) {
            problems.add(JobProblem.of(at + "/devices", "wrong.nothing-of-kind", kinds(circuit)));
            return List.of();
        }
        if (circuit.ratingA().isEmpty()) {
            return candidates;
        }
        double fixedA = circuit.ratingA().getAsDouble();
        return ofRating(
                candidates,
                fixedA,
                at,
                () ->
                        Phrase.of(
                                "wrong.no-rating",
                                amperes(fixedA),
                                kinds(circuit),
                                ratings(candidates)));
    }

    private List<Device> ofRating(
            List<Device> candidates, double fixedA, String at, Supplier<Text> otherwise) {
        List<Device> ofRating = candidates.stream().filter(d -> d.ratingA() == fixedA).toList();
        if (ofRating.isEmpty()) {
            problems.add(new JobProblem(at + "/ratingA", otherwise.get()));
        }
        return ofRating;
    }

    private static Text ratings(List<Device> devices) {
        return figures(devices.stream().map(Device::ratingA), Unit.AMPERE);
    }

    private static Amount amperes(double ratingA) {
        return new Amount(ratingA, Unit.AMPERE, MOST_DECIMALS);
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
        problems.add(JobProblem.of(at + "/gauge", "wrong.no-size", size.label(), sizes));
        return family;
    }

    private static JobProblem notInColour(WireSize size, WireColour colour, String at) {
        return JobProblem.of(at + "/gauge", "wrong.not-in-colour", size.label(), colour.code());
    }

    private Optional<Relay> relayFor(String at) {
        double nominalV = job.supply().nominalV();
        Optional<Relay> cheapest =
                stock.findCheapest(Relay.class, relay -> relay.coilV() == nominalV);
        if (cheapest.isEmpty()) {
            List<Relay> stocked = stock.list(Relay.class);
            Amount wanted = Amount.volts(nominalV);
            problems.add(
                    stocked.isEmpty()
                            ? JobProblem.of(at + "/relay", "wrong.no-relay", wanted)
                            : JobProblem.of(
                                    at + "/relay",
                                    "wrong.no-relay-for",
                                    wanted,
                                    figures(stocked.stream().map(Relay::coilV), Unit.VOLT)));
        }
        return cheapest;
    }

    /** What is stocked, each once and rising, with the unit behind the last one. */
    private static Text figures(Stream<Double> values, Unit unit) {
        List<Amount> amounts =
                values.distinct()
                        .sorted()
                        .map(value -> new Amount(value, unit, MOST_DECIMALS))
                        .toList();
        int last = amounts.size() - 1;
        return Text.listed(
                Stream.concat(
                                amounts.subList(0, last).stream().map(Amount::bare),
                                Stream.of(amounts.get(last)))
                        .toList());
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

    private static Text quoted(List<String> names) {
        return Text.listed(names.stream().map(name -> Phrase.of("quoted", name)).toList());
    }
}
