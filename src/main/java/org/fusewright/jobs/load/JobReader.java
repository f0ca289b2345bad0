package org.fusewright.jobs.load;

import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.job.ArrangementKind;
import org.fusewright.core.job.BlockPlace;
import org.fusewright.core.job.Choices;
import org.fusewright.core.job.Circuit;
import org.fusewright.core.job.Duty;
import org.fusewright.core.job.Feed;
import org.fusewright.core.job.Inrush;
import org.fusewright.core.job.Job;
import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.JobReferences;
import org.fusewright.core.job.Load;
import org.fusewright.core.job.LoadKind;
import org.fusewright.core.job.Location;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.job.RelayUse;
import org.fusewright.core.job.ReturnPath;
import org.fusewright.core.job.Supply;
import org.fusewright.core.job.Surroundings;
import org.fusewright.core.quantity.Celsius;
import org.fusewright.core.quantity.Millimetres;
import org.fusewright.core.quantity.WireColour;
import org.fusewright.core.quantity.WireSize;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.fusewright.core.words.Unit;
import org.fusewright.jobs.JobReading;
import org.joda.money.CurrencyUnit;

import tools.jackson.databind.JsonNode;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Reads a job document and fills in what it leaves out. The bounds stated here are those of the
 * published schema, {@code schema/job.schema.json}.
 */
public final class JobReader {
    private static final Range VOLTS = Range.from(1, 60, Unit.VOLT);
    private static final Range MILLIOHM = Range.above(0, 1_000, "things.milliohm");
    private static final Range AMPERES = Range.above(0, 1_000, Unit.AMPERE);
    private static final Range RATING = Range.above(0, 500, Unit.AMPERE);
    private static final Range WATTS = Range.above(0, 20_000, Unit.WATT);
    private static final Range CELSIUS = Range.from(-60, 150, "things.celsius");
    static final Range LENGTH = Range.above(0, 100, Unit.METRE);
    private static final Range DISTANCE = Range.from(0, 100, Unit.METRE);
    private static final Range DIVERSITY = Range.above(0, 1, Unit.NONE);
    private static final Range DROP = Range.above(0, 50, Unit.PERCENT);
    private static final Range BUNDLE = Range.whole(1, 100, "things.leads");
    private static final Range COUNT = Range.whole(1, 100, Unit.NONE);
    private static final Range SPARES = Range.whole(0, 100, Unit.NONE);
    private static final Range POSITION = Range.whole(1, 24, Unit.NONE);
    private static final Range SLACK = Range.from(0, 100, Unit.PERCENT);
    private static final Range ALLOWANCE = Range.whole(0, 1_000, Unit.MILLIMETRE);
    private static final Range STEP = Range.whole(1, 1_000, Unit.MILLIMETRE);
    private static final Range SHORT_LEAD = Range.whole(1, 10_000, Unit.MILLIMETRE);
    private static final Range INRUSH_MULTIPLE = Range.from(1, 100, "things.times");
    private static final Range INRUSH_MS = Range.from(0, 60_000, "things.milliseconds");

    private static final Range FEEDS = Range.whole(1, 20, "things.feeds");
    private static final Range CIRCUITS = Range.whole(0, 400, "things.circuits");
    private static final Range LOADS = Range.whole(1, 50, "things.loads");
    private static final Range LOCATIONS = Range.whole(0, 50, "things.locations");
    private static final Range DEVICES = Range.whole(1, 3, "things.device-kinds");

    private static final double[] NOMINAL_VOLTS = {6, 12, 24};

    private static final Map<String, CurrencyUnit> CURRENCIES =
            CurrencyUnit.registeredCurrencies().stream()
                    .collect(Collectors.toUnmodifiableMap(CurrencyUnit::getCode, c -> c));

    private static final Text CURRENCY_WORDS = Phrase.of("wrong.give.currency");
    private static final Text COLOUR_WORDS =
            Phrase.of("wrong.give.colour", String.join(", ", WireColour.CODES));
    static final Text GAUGE_WORDS = Phrase.of("wrong.give.gauge");

    /** What {@link WireSize#parse} takes, without its freedom in spaces. */
    private static final Pattern GAUGE =
            Pattern.compile("\\d{1,3}(\\.\\d{1,3})? ?mm[2²]|(\\d{1,2}|[1-4]/0) ?(?i:AWG|SAE)");

    private static final List<DeviceKind> USUAL_DEVICES =
            List.of(DeviceKind.AUTO_RESET, DeviceKind.MANUAL_RESET, DeviceKind.FUSE);
    private static final String USUAL_LOCATION = "main";
    private static final double USUAL_DROP_PERCENT = 10;
    private static final double ESSENTIAL_DROP_PERCENT = 3;

    private static final Text LOAD_KINDS = oneOf(Stream.of(LoadKind.values()).map(LoadKind::code));
    static final Text DEVICE_KINDS = oneOf(Stream.of(DeviceKind.values()).map(DeviceKind::code));
    private static final Text RETURN_PATHS =
            oneOf(Stream.of(ReturnPath.values()).map(ReturnPath::code));
    private static final Text DUTIES = oneOf(Stream.of(Duty.values()).map(Duty::code));
    private static final Text ARRANGEMENTS =
            oneOf(Stream.of(ArrangementKind.values()).map(ArrangementKind::code));
    private static final Text TERMINALS = oneOf(Stream.of(Feed.PERMANENT, Feed.SWITCHED));

    /** Problems of one field each: what the published schema states too. */
    private final List<JobProblem> fieldProblems = new ArrayList<>();

    /** Problems between fields, which a schema cannot state. */
    private final List<JobProblem> relationProblems = new ArrayList<>();

    private JobReader() {}

    /**
     * Reads what arrived over the wire.
     *
     * @throws MalformedJobException when this is no JSON at all
     */
    public static JobReading read(byte[] json) {
        JsonTree tree = JsonTree.parse(json);
        JobReader reader = new JobReader();
        reader.fieldProblems.addAll(tree.problems());
        return reader.reading(tree.root());
    }

    /** Reads a document that is a tree already. */
    public static JobReading read(JsonNode document) {
        return new JobReader().reading(document);
    }

    private JobReading reading(JsonNode document) {
        Job job = job(document);
        List<JobProblem> relations = new ArrayList<>(relationProblems);
        relations.addAll(JobReferences.listProblems(job));
        return JobReading.of(document, job, fieldProblems, relations);
    }

    private Job job(JsonNode document) {
        try (Fields fields = Fields.of(document, "", fieldProblems)) {
            String reference = fields.getText("reference", TextForm.TITLE, "unnamed");
            String title = fields.findText("title", TextForm.TITLE).orElse(reference);
            String customer = fields.findText("customer", TextForm.FREE).orElse("");
            CurrencyUnit currency =
                    fields.findParsed("currency", JobReader::parseCurrency, CURRENCY_WORDS)
                            .orElse(CurrencyUnit.EUR);
            fields.require("supply", "wrong.give.supply");
            Supply supply = supply(fields.open("supply"), fields.has("supply"));
            Surroundings surroundings = surroundings(fields.open("surroundings"));
            fields.require("feeds", "wrong.give.feeds");
            List<Feed> feeds = fields.list("feeds", FEEDS, this::feed);
            fields.require("circuits", "wrong.give.circuits");
            fields.ask("locations", "choices");
            Choices choices = choices(fields.open("choices"));
            List<Circuit> circuits =
                    fields.list(
                            "circuits", CIRCUITS, (node, at) -> circuit(node, at, supply, choices));
            List<Location> locations = fields.list("locations", LOCATIONS, this::location);
            return new Job(
                    reference,
                    title,
                    customer,
                    currency,
                    supply,
                    surroundings,
                    feeds,
                    circuits,
                    locations,
                    choices);
        }
    }

    private Supply supply(Fields given, boolean required) {
        try (Fields fields = given) {
            if (required) {
                fields.require("nominalV", "wrong.give.nominal");
            }
            double nominalV = fields.findOneOf("nominalV", NOMINAL_VOLTS).orElse(12);
            double engineOffV =
                    fields.findNumber("engineOffV", VOLTS).orElse(usualEngineOffV(nominalV));
            double chargingV =
                    fields.findNumber("chargingV", VOLTS).orElse(usualChargingV(nominalV));
            double milliohm = fields.findNumber("batteryResistanceMilliohm", MILLIOHM).orElse(12);
            OptionalDouble outputA = fields.findNumber("chargingOutputA", AMPERES);
            if (chargingV < engineOffV) {
                String field = fields.has("chargingV") ? "chargingV" : "engineOffV";
                relationProblems.add(
                        JobProblem.of(
                                Fields.below(fields.pointer(), field),
                                "wrong.charging-below-off",
                                chargingV,
                                engineOffV));
                chargingV = engineOffV;
            }
            OptionalDouble idleA = fields.findNumber("idleOutputA", AMPERES);
            if (idleA.isPresent() && idleA.getAsDouble() > outputA.orElse(AMPERES.max())) {
                relationProblems.add(
                        JobProblem.of(
                                Fields.below(fields.pointer(), "idleOutputA"),
                                "wrong.idle-above-speed",
                                idleA.getAsDouble(),
                                outputA.getAsDouble()));
                idleA = OptionalDouble.empty();
            }
            return new Supply(nominalV, engineOffV, chargingV, milliohm, outputA, idleA);
        }
    }

    private static double usualEngineOffV(double nominalV) {
        return nominalV == 6 ? 6.1 : nominalV == 24 ? 24.4 : 12.2;
    }

    private static double usualChargingV(double nominalV) {
        return nominalV == 6 ? 7.1 : nominalV == 24 ? 28.4 : 14.2;
    }

    private static Surroundings surroundings(Fields given) {
        try (Fields fields = given) {
            double ambientC = fields.findNumber("ambientC", CELSIUS).orElse(40);
            double blockC =
                    fields.findNumber("blockAmbientC", CELSIUS)
                            .orElse(Math.min(ambientC + 10, CELSIUS.max()));
            int bundled = fields.findWhole("bundledLeads", BUNDLE).orElse(6);
            return new Surroundings(new Celsius(ambientC), new Celsius(blockC), bundled);
        }
    }

    private Feed feed(JsonNode node, String pointer) {
        try (Fields fields = Fields.of(node, pointer, fieldProblems)) {
            String id = fields.getText("id", TextForm.ID, unnamed("feed", pointer));
            String terminal =
                    fields.getParsed("terminal", JobReader::parseTerminal, TERMINALS, "30");
            double lengthM = fields.getNumber("lengthM", LENGTH);
            double distanceM = fields.getNumber("sourceDistanceM", DISTANCE);
            double diversity = fields.findNumber("diversity", DIVERSITY).orElse(1);
            OptionalDouble ratingA = fields.findNumber("ratingA", RATING);
            Optional<WireSize> gauge =
                    fields.findParsed("gauge", JobReader::parseGauge, GAUGE_WORDS);
            return new Feed(id, terminal, lengthM, distanceM, diversity, ratingA, gauge);
        }
    }

    private Circuit circuit(JsonNode node, String pointer, Supply supply, Choices choices) {
        try (Fields fields = Fields.of(node, pointer, fieldProblems)) {
            String id = fields.getText("id", TextForm.ID, unnamed("circuit", pointer));
            String title = fields.findText("title", TextForm.TITLE).orElse(id);
            String feed = fields.getText("feed", TextForm.ID, "");
            String location = fields.findText("location", TextForm.TITLE).orElse(USUAL_LOCATION);
            boolean essential = fields.findFlag("essential", false);
            double runM = fields.getNumber("runM", LENGTH);
            ReturnPath returnPath =
                    fields.findParsed("returnPath", ReturnPath::parse, RETURN_PATHS)
                            .orElse(ReturnPath.CHASSIS);
            Optional<WireColour> colour =
                    fields.findParsed("colour", WireColour::parse, COLOUR_WORDS);
            List<DeviceKind> devices = devices(fields);
            OptionalDouble ratingA = fields.findNumber("ratingA", RATING);
            Optional<WireSize> gauge =
                    fields.findParsed("gauge", JobReader::parseGauge, GAUGE_WORDS);
            double maxDropPercent =
                    fields.findNumber("maxDropPercent", DROP)
                            .orElse(essential ? ESSENTIAL_DROP_PERCENT : USUAL_DROP_PERCENT);
            Optional<RelayUse> relay =
                    fields.has("relay")
                            ? Optional.of(relay(fields.open("relay")))
                            : Optional.empty();
            Optional<BlockPlace> place = findPlace(fields);
            fields.require("loads", "wrong.give.loads");
            List<Load> loads =
                    fields.list("loads", LOADS, (load, at) -> load(load, at, supply.nominalV()));
            return new Circuit(
                    id,
                    title,
                    feed,
                    location,
                    essential,
                    runM,
                    returnPath,
                    colour,
                    devices.isEmpty() ? choices.devices() : devices,
                    ratingA,
                    gauge,
                    maxDropPercent,
                    relay,
                    place,
                    loads.isEmpty() ? List.of(load(supply.nominalV())) : loads);
        }
    }

    /** A load to carry on with where the document has none that can be used. */
    private static Load load(double nominalV) {
        LoadKind kind = LoadKind.RESISTIVE;
        return new Load(kind.code(), kind, 1, nominalV, 1, kind.usualInrush(), Duty.CONTINUOUS, 0);
    }

    private static RelayUse relay(Fields given) {
        try (Fields fields = given) {
            String triggerFrom = fields.getText("triggerFrom", TextForm.ID, RelayUse.CONTROLLER);
            double triggerM = fields.getNumber("triggerM", LENGTH);
            double groundM = fields.getNumber("groundM", LENGTH);
            Optional<String> contactFrom = fields.findText("contactFrom", TextForm.ID);
            return new RelayUse(triggerFrom, triggerM, groundM, contactFrom, findPlace(fields));
        }
    }

    private static Optional<BlockPlace> findPlace(Fields holder) {
        return holder.has("place") ? Optional.of(place(holder.open("place"))) : Optional.empty();
    }

    private static BlockPlace place(Fields given) {
        try (Fields fields = given) {
            String block = fields.getText("block", TextForm.ID, "B1");
            Optional<String> part = fields.findText("part", TextForm.TITLE);
            OptionalInt position = fields.findWhole("position", POSITION);
            boolean fixed = fields.findFlag("fixed", true);
            return new BlockPlace(block, part, position, fixed);
        }
    }

    private Load load(JsonNode node, String pointer, double nominalV) {
        try (Fields fields = Fields.of(node, pointer, fieldProblems)) {
            Optional<String> title = fields.findText("title", TextForm.TITLE);
            LoadKind kind =
                    fields.getParsed("kind", LoadKind::parse, LOAD_KINDS, LoadKind.RESISTIVE);
            double ratedV;
            OptionalDouble watts = fields.findNumber("watts", WATTS);
            OptionalDouble amps = fields.findNumber("amps", AMPERES);
            ratedV = fields.findNumber("ratedV", VOLTS).orElse(nominalV);
            if (fields.isObject() && fields.has("watts") == fields.has("amps")) {
                fields.reportHere(
                        fields.has("watts") ? "wrong.watts-and-amps" : "wrong.no-watts-or-amps");
            }
            double ratedA = amps.orElse(watts.orElse(ratedV) / ratedV);
            int count = fields.findWhole("count", COUNT).orElse(1);
            Inrush inrush =
                    fields.has("inrush") ? inrush(fields.open("inrush")) : kind.usualInrush();
            Duty duty = fields.findParsed("duty", Duty::parse, DUTIES).orElse(Duty.CONTINUOUS);
            double branchM = fields.findNumber("branchM", DISTANCE).orElse(0);
            return new Load(
                    title.orElse(kind.code()), kind, ratedA, ratedV, count, inrush, duty, branchM);
        }
    }

    private static Inrush inrush(Fields given) {
        try (Fields fields = given) {
            double multiple = fields.getNumber("multiple", INRUSH_MULTIPLE);
            double ms = fields.getNumber("ms", INRUSH_MS);
            return new Inrush(multiple, ms);
        }
    }

    private Location location(JsonNode node, String pointer) {
        try (Fields fields = Fields.of(node, pointer, fieldProblems)) {
            String name = fields.getText("name", TextForm.TITLE, unnamed("location", pointer));
            double fromFeedM = fields.getNumber("fromFeedM", DISTANCE);
            return new Location(name, fromFeedM);
        }
    }

    private static Choices choices(Fields given) {
        try (Fields fields = given) {
            List<DeviceKind> devices = devices(fields);
            Optional<String> family = fields.findText("wireFamily", TextForm.TITLE);
            boolean wedge = fields.findFlag("lockingWedge", true);
            boolean plugs = fields.findFlag("plugEmptyCavities", true);
            int sparePositions = fields.findWhole("sparePositions", SPARES).orElse(0);
            int spareFuses = fields.findWhole("spareFusesPerRating", SPARES).orElse(1);
            double slackPercent = fields.findNumber("slackPercent", SLACK).orElse(5);
            int allowanceMm = fields.findWhole("endAllowanceMm", ALLOWANCE).orElse(40);
            int stepMm = fields.findWhole("cutStepMm", STEP).orElse(10);
            int pigtailMm = fields.findWhole("pigtailMm", SHORT_LEAD).orElse(310);
            int jumperMm = fields.findWhole("jumperMm", SHORT_LEAD).orElse(120);
            ArrangementKind arrangement =
                    fields.findParsed("arrangement", ArrangementKind::parse, ARRANGEMENTS)
                            .orElse(ArrangementKind.CHEAPEST);
            return new Choices(
                    devices.isEmpty() ? USUAL_DEVICES : devices,
                    family,
                    wedge,
                    plugs,
                    sparePositions,
                    spareFuses,
                    slackPercent,
                    new Millimetres(allowanceMm),
                    new Millimetres(stepMm),
                    new Millimetres(pigtailMm),
                    new Millimetres(jumperMm),
                    arrangement);
        }
    }

    /** Device kinds in the order of preference; empty when left out. */
    private static List<DeviceKind> devices(Fields fields) {
        List<DeviceKind> known =
                List.copyOf(
                        fields.listParsed("devices", DEVICES, DeviceKind::parse, DEVICE_KINDS)
                                .values());
        if (known.size() < 2) {
            return known;
        }
        List<DeviceKind> distinct = known.stream().distinct().toList();
        if (distinct.size() < known.size()) {
            fields.report("devices", "wrong.kind-twice", DEVICE_KINDS);
        }
        return distinct;
    }

    private static Optional<CurrencyUnit> parseCurrency(String code) {
        return Optional.ofNullable(CURRENCIES.get(code));
    }

    private static Optional<String> parseTerminal(String terminal) {
        return Optional.of(terminal)
                .filter(t -> t.equals(Feed.PERMANENT) || t.equals(Feed.SWITCHED));
    }

    static Optional<WireSize> parseGauge(String text) {
        return GAUGE.matcher(text).matches() ? WireSize.parse(text) : Optional.empty();
    }

    /** The name of a thing that has none, such as "(feed 1)". */
    private static String unnamed(String what, String pointer) {
        int index = Integer.parseInt(pointer.substring(pointer.lastIndexOf('/') + 1));
        return "(" + what + " " + (index + 1) + ")";
    }

    static Text oneOf(Stream<String> codes) {
        return Phrase.of("wrong.one-of", codes.collect(Collectors.joining(", ")));
    }
}
