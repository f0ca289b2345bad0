package org.fusewright.catalogs.load;

import org.fusewright.catalogs.PartKind;
import org.fusewright.core.catalog.BaggedSet;
import org.fusewright.core.catalog.BladeForm;
import org.fusewright.core.catalog.Block;
import org.fusewright.core.catalog.Cap;
import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.catalog.Holder;
import org.fusewright.core.catalog.Item;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.catalog.Plug;
import org.fusewright.core.catalog.Relay;
import org.fusewright.core.catalog.Rerating;
import org.fusewright.core.catalog.Seal;
import org.fusewright.core.catalog.Splice;
import org.fusewright.core.catalog.Terminal;
import org.fusewright.core.catalog.TimeCurrent;
import org.fusewright.core.catalog.Wedge;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.quantity.WireColour;
import org.fusewright.core.quantity.WireSize;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * The file of one kind of part: its name, its columns beside those of every part, and how a row
 * becomes a part. Columns are named like the components of the part's record, units included; an
 * optional one may be left out of the file.
 */
record PartFile(
        String name,
        List<String> ownColumns,
        Set<String> optionalColumns,
        BiFunction<Row, References, ? extends Part> read) {

    private static final List<String> ITEM_COLUMNS = List.of("part", "title", "brand", "massG");
    private static final int MOST_PIECES = 100_000;
    private static final Set<String> SUPPRESSIONS = Set.of("resistor", "diode", "none");

    // Stand in for a cell that cannot be read; a part made with one is thrown away.
    private static final TimeCurrent ANY_GATES =
            new TimeCurrent(List.of(new TimeCurrent.Gate(100, 0, Double.POSITIVE_INFINITY)));
    private static final Relay.Pinout ANY_PINOUT = new Relay.Pinout("30", "87", "86", "85");

    static PartFile of(PartKind kind) {
        return switch (kind) {
            case BLOCK ->
                    file(
                            "blocks.csv",
                            PartFile::block,
                            "terminalFamily positions relayPairs maxTotalA maxPositionA pitchMm");
            case CAP ->
                    file(
                            "caps.csv",
                            PartFile::cap,
                            "fits clearanceMm labelWidthMm? labelHeightMm?");
            case WEDGE -> file("wedges.csv", PartFile::wedge, "fits");
            case TERMINAL ->
                    file(
                            "terminals.csv",
                            PartFile::terminal,
                            "family minAreaMm2 maxAreaMm2 maxCurrentA contactMilliohm stripMm");
            case SEAL -> file("seals.csv", PartFile::seal, "family minOutsideMm maxOutsideMm");
            case PLUG -> file("plugs.csv", PartFile::plug, "family");
            case DEVICE ->
                    file(
                            "devices.csv",
                            PartFile::device,
                            "kind form ratingA maxVoltageV interruptingA heightMm milliohm colour"
                                    + " gates rerating");
            case RELAY ->
                    file(
                            "relays.csv",
                            PartFile::relay,
                            "coilV coilOhm pullInV dropOutV contactA contactMilliohm heightMm"
                                    + " suppression firstA firstB secondA secondB");
            case WIRE ->
                    file(
                            "wires.csv",
                            PartFile::wire,
                            "family size colour copperMm2 outsideMm milliohmPerM classC"
                                    + " insulation");
            case SPLICE ->
                    file(
                            "splices.csv",
                            PartFile::splice,
                            "maxLeads minAreaMm2 maxAreaMm2 milliohm");
            case HOLDER ->
                    file(
                            "holders.csv",
                            PartFile::holder,
                            "form maxCurrentA minAreaMm2 maxAreaMm2 contactMilliohm");
            case SET -> file("sets.csv", PartFile::baggedSet, "contains");
        };
    }

    private static PartFile file(
            String name, BiFunction<Row, References, ? extends Part> read, String ownColumns) {
        List<String> columns = new ArrayList<>();
        Set<String> optional = new TreeSet<>();
        for (String word : ownColumns.split(" ")) {
            String column = word.replace("?", "");
            columns.add(column);
            if (!word.equals(column)) {
                optional.add(column);
            }
        }
        return new PartFile(name, columns, optional, read);
    }

    List<String> columns() {
        return Stream.concat(ITEM_COLUMNS.stream(), ownColumns.stream()).toList();
    }

    Optional<Part> readPart(Row row, References references) {
        return row.build(() -> read.apply(row, references));
    }

    private static Item item(Row row) {
        return new Item(
                row.partNumber("part"),
                row.text("title"),
                row.text("brand"),
                row.number("massG", Range.MASS_G));
    }

    private static Block block(Row row, References references) {
        Item item = item(row);
        String family = row.text("terminalFamily");
        references.needFamily(row, "terminalFamily", family);
        int positions = row.whole("positions", 1, 24);
        return new Block(
                item,
                family,
                positions,
                row.nested("relayPairs", () -> relayPairs(row, positions), List.of()),
                row.number("maxTotalA", Range.CURRENT_A),
                row.number("maxPositionA", Range.CURRENT_A),
                row.number("pitchMm", Range.LENGTH_MM));
    }

    private static List<Block.RelayPair> relayPairs(Row row, int positions) {
        return row.listEntries("relayPairs").stream()
                .map(entry -> relayPair(entry, positions))
                .toList();
    }

    private static Block.RelayPair relayPair(String entry, int positions) {
        for (int first = 1; first < positions; first++) {
            Block.RelayPair pair = new Block.RelayPair(first);
            if (entry.equals(pair.first() + "+" + pair.second())) {
                return pair;
            }
        }
        throw new IllegalArgumentException(
                Phrase.of("refused.no-relay-pairs", positions).english());
    }

    private static Cap cap(Row row, References references) {
        return new Cap(
                item(row),
                fits(row, references),
                row.number("clearanceMm", Range.LENGTH_MM),
                row.optionalNumber("labelWidthMm", Range.LABEL_MM),
                row.optionalNumber("labelHeightMm", Range.LABEL_MM));
    }

    private static Wedge wedge(Row row, References references) {
        return new Wedge(item(row), fits(row, references));
    }

    private static Set<PartNumber> fits(Row row, References references) {
        List<PartNumber> blocks = row.listPartNumbers("fits");
        for (PartNumber block : blocks) {
            references.needPart(row, "fits", block, EnumSet.of(PartKind.BLOCK));
        }
        return new TreeSet<>(blocks);
    }

    private static Terminal terminal(Row row, References references) {
        Item item = item(row);
        String family = row.text("family");
        references.offerFamily(PartKind.TERMINAL, family);
        double minAreaMm2 = row.number("minAreaMm2", Range.AREA_MM2);
        return new Terminal(
                item,
                family,
                minAreaMm2,
                row.upperEnd("maxAreaMm2", Range.AREA_MM2, "minAreaMm2", minAreaMm2),
                row.number("maxCurrentA", Range.CURRENT_A),
                row.number("contactMilliohm", Range.MILLIOHM),
                row.number("stripMm", Range.LENGTH_MM));
    }

    private static Seal seal(Row row, References references) {
        Item item = item(row);
        String family = row.text("family");
        references.offerFamily(PartKind.SEAL, family);
        double minOutsideMm = row.number("minOutsideMm", Range.LENGTH_MM);
        return new Seal(
                item,
                family,
                minOutsideMm,
                row.upperEnd("maxOutsideMm", Range.LENGTH_MM, "minOutsideMm", minOutsideMm));
    }

    private static Plug plug(Row row, References references) {
        Item item = item(row);
        String family = row.text("family");
        references.offerFamily(PartKind.PLUG, family);
        return new Plug(item, family);
    }

    private static Device device(Row row, References references) {
        return new Device(
                item(row),
                row.parsed(
                        "kind",
                        DeviceKind::parse,
                        codes(DeviceKind.values(), DeviceKind::code),
                        DeviceKind.FUSE),
                bladeForm(row),
                row.number("ratingA", Range.CURRENT_A),
                row.number("maxVoltageV", Range.VOLTAGE_V),
                row.number("interruptingA", Range.INTERRUPTING_A),
                row.number("heightMm", Range.LENGTH_MM),
                row.number("milliohm", Range.MILLIOHM),
                row.optionalText("colour"),
                row.nested("gates", () -> gates(row), ANY_GATES),
                row.nested("rerating", () -> rerating(row), Rerating.NONE));
    }

    private static BladeForm bladeForm(Row row) {
        return row.parsed(
                "form",
                BladeForm::parse,
                codes(BladeForm.values(), BladeForm::code),
                BladeForm.MINI);
    }

    private static <T> Text codes(T[] values, Function<T, String> code) {
        return Phrase.of(
                "wrong.one-of", String.join(", ", Arrays.stream(values).map(code).toList()));
    }

    private static TimeCurrent gates(Row row) {
        return new TimeCurrent(
                row.listPairs(
                        "gates",
                        "catalog.form.gates",
                        pair -> {
                            double percent = pair.leftNumber(Range.PERCENT_OF_RATING);
                            double[] ends = pair.rightEnds(Range.OPENING_S);
                            return new TimeCurrent.Gate(percent, ends[0], ends[1]);
                        }));
    }

    private static Rerating rerating(Row row) {
        return new Rerating(
                row.listPairs(
                        "rerating",
                        "catalog.form.rerating",
                        pair ->
                                new Rerating.Point(
                                        pair.leftNumber(Range.TEMPERATURE_C),
                                        pair.rightDecimal(Range.RERATING_FACTOR).doubleValue())));
    }

    private static Relay relay(Row row, References references) {
        Item item = item(row);
        double coilV = row.number("coilV", Range.VOLTAGE_V);
        double coilOhm = row.number("coilOhm", Range.COIL_OHM);
        double dropOutV = row.number("dropOutV", Range.VOLTAGE_V);
        return new Relay(
                item,
                coilV,
                coilOhm,
                row.upperEnd("pullInV", Range.VOLTAGE_V, "dropOutV", dropOutV),
                dropOutV,
                row.number("contactA", Range.CURRENT_A),
                row.number("contactMilliohm", Range.MILLIOHM),
                row.number("heightMm", Range.LENGTH_MM),
                row.parsed(
                        "suppression",
                        word -> Optional.of(word).filter(SUPPRESSIONS::contains),
                        Phrase.of("wrong.one-of", "resistor, diode, none"),
                        "none"),
                row.nested("firstA", () -> pinout(row), ANY_PINOUT));
    }

    private static Relay.Pinout pinout(Row row) {
        return new Relay.Pinout(
                row.cell("firstA"), row.cell("firstB"), row.cell("secondA"), row.cell("secondB"));
    }

    private static Wire wire(Row row, References references) {
        return new Wire(
                item(row),
                row.text("family"),
                row.parsed("size", WireSize::parse, Phrase.of("catalog.size"), WireSize.ofAwg(16)),
                row.parsed(
                        "colour",
                        WireColour::parse,
                        Phrase.of("catalog.colour"),
                        new WireColour("BK")),
                row.number("copperMm2", Range.AREA_MM2),
                row.number("outsideMm", Range.LENGTH_MM),
                row.number("milliohmPerM", Range.MILLIOHM_PER_M),
                row.number("classC", Range.CLASS_C),
                row.text("insulation"));
    }

    private static Splice splice(Row row, References references) {
        Item item = item(row);
        int maxLeads = row.whole("maxLeads", 3, 50);
        double minAreaMm2 = row.number("minAreaMm2", Range.AREA_MM2);
        return new Splice(
                item,
                maxLeads,
                minAreaMm2,
                row.upperEnd("maxAreaMm2", Range.AREA_MM2, "minAreaMm2", minAreaMm2),
                row.number("milliohm", Range.MILLIOHM));
    }

    private static Holder holder(Row row, References references) {
        Item item = item(row);
        BladeForm form = bladeForm(row);
        double maxCurrentA = row.number("maxCurrentA", Range.CURRENT_A);
        double minAreaMm2 = row.number("minAreaMm2", Range.AREA_MM2);
        return new Holder(
                item,
                form,
                maxCurrentA,
                minAreaMm2,
                row.upperEnd("maxAreaMm2", Range.AREA_MM2, "minAreaMm2", minAreaMm2),
                row.number("contactMilliohm", Range.MILLIOHM));
    }

    private static BaggedSet baggedSet(Row row, References references) {
        Item item = item(row);
        return row.nested(
                "contains",
                () -> new BaggedSet(item, contents(row, references)),
                new BaggedSet(item, List.of(new BaggedSet.Content(item.number(), 1))));
    }

    private static List<BaggedSet.Content> contents(Row row, References references) {
        List<BaggedSet.Content> contents =
                row.listPairs(
                        "contains",
                        "catalog.form.contains",
                        pair ->
                                new BaggedSet.Content(
                                        pair.leftPart(), pair.rightWhole(1, MOST_PIECES)));
        for (BaggedSet.Content content : contents) {
            references.needPart(
                    row,
                    "contains",
                    content.part(),
                    EnumSet.complementOf(EnumSet.of(PartKind.SET)));
        }
        return contents;
    }
}
