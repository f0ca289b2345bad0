package org.fusewright.papers;

import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.check.Basis;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Subject;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.words.Text;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** Kits made by hand, without the planner: parts, leads and cavities agree with each other. */
public final class SampleKits {

    private static final String LONG_WORD = "Extraordinarilylongunbreakablename".repeat(5);

    /** Control characters, marks of direction, markup, emoji, halves of signs, other scripts. */
    static final String HOSTILE =
            "<script>alert('x')</script> \u0000\u0007\u001b[31m\u202Egnp.exe\u202C\u200F\uFEFF"
                    + " \ud83d\ude00 \ud83e\udd84 \ud800 tab\tline\nend \u05D0\u05D1 \u0628"
                    + " %s {0} ${x} \\ (paren) 中文 e\u0301 \uE000";

    private SampleKits() {}

    /** One block of four positions: a relay for the pump, lamps, a gauge. */
    public static Kit small() {
        return smallBuilder("").build();
    }

    private static KitBuilder smallBuilder(String adorn) {
        KitBuilder kit =
                new KitBuilder(adorn)
                        .named("TQ-014", "Trail patrol quad", "Highmoor Trails")
                        .block(4, "under seat")
                        .relayCircuit("pump", "Fuel pump", 10, "1.0", "VT")
                        .circuit("lamps", "Work lamps", DeviceKind.AUTO_RESET, 10, "1.0", "RDBK");
        passes(kit, 31);
        kit.check(
                Check.atMost(
                        CheckCode.VOLTAGE_DROP,
                        Subject.circuit("lamps").detail("load Right lamp"),
                        new Check.Measured(10.004, 10, "%"),
                        Verdict.CAUTION,
                        Text.verbatim(
                                "Right lamp loses 10.004 % of its voltage: take the next thicker"
                                        + " wire or shorten the run."),
                        Basis.published("AC 43.13-1B table 11-6")));
        return kit;
    }

    /** Nothing but passes. */
    public static Kit clean() {
        KitBuilder kit =
                new KitBuilder("")
                        .named("TQ-015", "Trail patrol quad", "Highmoor Trails")
                        .block(3, "under seat")
                        .circuit("gauge", "Gauge", DeviceKind.FUSE, 5, "0.5", "BN");
        passes(kit, 12);
        return kit.build();
    }

    /** Forty circuits in seven blocks of three to twelve positions. */
    public static Kit large() {
        KitBuilder kit =
                new KitBuilder("")
                        .named("EX-200", "Expedition sidecar outfit", "Fellside Overland");
        int[] blocks = {3, 4, 8, 8, 12, 8, 8};
        String[] locations = {
            "steering head", "under seat", "under seat", "sidecar", "sidecar", "tail", "tail"
        };
        int[] circuits = {3, 2, 6, 6, 10, 8, 5};
        int number = 1;
        for (int i = 0; i < blocks.length; i++) {
            kit.block(blocks[i], locations[i]);
            for (int k = 0; k < circuits[i]; k++) {
                addCircuit(kit, number++, i >= 1 && i <= 4 && k == 0);
            }
        }
        passes(kit, 420);
        for (int i = 1; i <= 6; i++) {
            kit.check(caution(i));
        }
        kit.check(
                Check.atMost(
                        CheckCode.BLOCK_CURRENT,
                        Subject.block("B3"),
                        new Check.Measured(71.25, 60, "A"),
                        Verdict.FAIL,
                        Text.verbatim(
                                "Block B3 would carry 71.25 A: move a heavy circuit to another"
                                        + " block."),
                        Basis.published("catalog data: most current of BW-H8")));
        return kit.build();
    }

    private static void addCircuit(KitBuilder kit, int number, boolean relay) {
        String[] colours = {"RD", "BK", "VT", "GNYE", "BUWH", "OG", "TQ", "PK", "GY", "WHRD"};
        double[] ratings = {5, 7.5, 10, 15, 20, 25, 30, 3, 2};
        String[] sizes = {"0.5", "1.0", "1.5", "2.5"};
        String colour = colours[number % colours.length];
        double rating = ratings[number % ratings.length];
        String size = sizes[number % sizes.length];
        String id = "c" + number;
        if (relay) {
            kit.relayCircuit(id, "Relayed consumer " + number, rating, size, colour);
        } else {
            DeviceKind kind = DeviceKind.values()[number % 3];
            kit.circuit(id, "Consumer " + number, kind, rating, size, colour);
        }
    }

    /** Every name as long or as hostile as a file could make it. */
    public static Kit longNames() {
        String adorn = " " + LONG_WORD + " and " + "many words ".repeat(12) + HOSTILE;
        KitBuilder kit =
                new KitBuilder(adorn)
                        .named("REF-" + "9".repeat(120), "Title" + adorn, "Customer" + adorn)
                        .block(4, "location" + adorn)
                        .relayCircuit("pump" + LONG_WORD, "Pump" + adorn, 10, "1.0", "VT")
                        .circuit(
                                "lamps/" + "x".repeat(90),
                                "Lamps" + adorn,
                                DeviceKind.MANUAL_RESET,
                                7.5,
                                "2.5",
                                "GNYE");
        kit.check(
                new Check(
                        CheckCode.STOCKED,
                        Subject.circuit("pump" + LONG_WORD).detail(adorn),
                        123456789.123456,
                        0.000012345678,
                        "units" + LONG_WORD,
                        -1,
                        Verdict.FAIL,
                        Text.verbatim("What to do:" + adorn.repeat(40)),
                        Basis.published("source" + adorn)));
        return kit.build();
    }

    /** A job without a circuit. */
    public static Kit empty() {
        return new KitBuilder("").named("EM-1", "Nothing yet", "Highmoor Trails").build();
    }

    /** All of them. */
    static List<Kit> listKits() {
        return List.of(small(), clean(), large(), longNames(), empty());
    }

    private static void passes(KitBuilder kit, int count) {
        List<Check> passes = new ArrayList<>();
        IntStream.rangeClosed(1, count)
                .forEach(
                        i ->
                                passes.add(
                                        Check.atMost(
                                                CheckCode.RUNNING_LOAD,
                                                Subject.circuit("number " + i),
                                                new Check.Measured(4, 8, "A"),
                                                Verdict.FAIL,
                                                Text.verbatim(
                                                        "Runs at half of what the device carries."),
                                                Basis.commonPractice())));
        passes.forEach(kit::check);
    }

    private static Check caution(int number) {
        return Check.atMost(
                CheckCode.AUTOMATIC_RESTART,
                Subject.circuit("c" + 3 * number),
                new Check.Measured(1, 0, ""),
                Verdict.CAUTION,
                Text.verbatim(
                        "Consumer "
                                + 3 * number
                                + " moves and its device comes back by itself: guard it"
                                + " or take a manual-reset breaker."),
                Basis.published("AC 43.13-1B 11-50"));
    }
}
