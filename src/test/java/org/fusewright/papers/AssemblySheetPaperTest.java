package org.fusewright.papers;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.Relay;
import org.fusewright.core.kit.Cavity;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitBlock;
import org.fusewright.core.kit.KitLead;
import org.fusewright.core.sizing.SizedSplice;
import org.fusewright.core.words.Wording;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;

class AssemblySheetPaperTest {

    static Stream<Kit> kits() {
        return Stream.of(
                        PlannedKits.listSamples(),
                        PlannedKits.listKits(),
                        List.of(SampleKits.small(), SampleKits.large()))
                .flatMap(List::stream);
    }

    private static String dense(Kit kit, Paper sheet) {
        byte[] pdf =
                BenchPaper.ASSEMBLY_SHEET.print(kit, OptionalInt.of(2), sheet, Wording.ENGLISH);
        try (PrintedPaper printed = PrintedPaper.of(pdf)) {
            return printed.denseText();
        }
    }

    /** In one row: cavity, role, lead, gauge, colour, strip length, seal, terminal. */
    @ParameterizedTest
    @MethodSource("kits")
    void loadsEveryCavity(Kit kit) {
        String text = dense(kit, Paper.A4);
        for (KitBlock block : kit.blocks()) {
            for (Cavity cavity : block.cavities()) {
                cavity.occupant()
                        .ifPresentOrElse(
                                occupant -> assertRow(text, cavity, occupant),
                                () ->
                                        assertThat(text)
                                                .contains(
                                                        cavity.id()
                                                                + "empty"
                                                                + number(cavity.plug())
                                                                + "☐"));
            }
        }
    }

    private static void assertRow(String text, Cavity cavity, Cavity.Occupant occupant) {
        String row = text.substring(text.indexOf(cavity.id() + occupant.role().code()));
        String head = row.substring(0, Math.min(row.length(), 400));
        String wire =
                occupant.lead().wire().size().label().replace("mm2", "mm²")
                        + occupant.lead().wire().colour().code();
        assertThat(head)
                .contains(PrintedPaper.dense(occupant.lead().id()))
                .contains(PrintedPaper.dense(wire))
                .contains(number(occupant.seal()))
                .contains(number(occupant.terminal()))
                .contains(occupant.terminal().map(t -> t.stripMm() + "").orElse("–"));
        assertThat(head.indexOf("☐☐☐")).isPositive();
    }

    private static String number(Optional<? extends Part> part) {
        return part.map(found -> found.number().value()).orElse("⚠none");
    }

    @ParameterizedTest
    @MethodSource("kits")
    void namesEveryLeadSpliceDeviceAndCap(Kit kit) {
        String text = dense(kit, Paper.LETTER);
        kit.leads()
                .map(KitLead::lead)
                .forEach(lead -> assertThat(text).contains(PrintedPaper.dense(lead.id())));
        Stream.concat(
                        kit.feeds().stream().flatMap(feed -> feed.sized().splices().stream()),
                        kit.circuits().stream().flatMap(c -> c.sized().splices().stream()))
                .map(SizedSplice::id)
                .forEach(splice -> assertThat(text).contains("☐" + PrintedPaper.dense(splice)));
        for (KitBlock block : kit.blocks()) {
            assertThat(text).contains("☐Cap" + block.cap().number());
            assertThat(text)
                    .contains(
                            "☐Wedge,last"
                                    + block.wedge().map(w -> w.number().value()).orElse("none"));
            for (KitBlock.Seat seat : block.seats()) {
                assertThat(text).contains("☐Position" + positions(seat) + seat.part().number());
            }
        }
    }

    private static String positions(KitBlock.Seat seat) {
        return String.join("+", seat.positions().stream().map(String::valueOf).toList());
    }

    @ParameterizedTest
    @MethodSource("kits")
    void wiresEveryTerminalOfEveryRelay(Kit kit) {
        String text = dense(kit, Paper.A4);
        for (KitBlock block : kit.blocks()) {
            for (KitBlock.Seat seat : block.seats()) {
                if (!(seat.part() instanceof Relay relay)) {
                    continue;
                }
                String group =
                        relay.number() + "in" + block.id() + "-" + seat.positions().getFirst();
                assertThat(text).contains(group);
                block.cavities().stream()
                        .filter(cavity -> seat.positions().contains(cavity.position()))
                        .forEach(
                                cavity ->
                                        assertThat(text)
                                                .containsPattern(
                                                        "☐"
                                                                + cavity.occupant()
                                                                        .orElseThrow()
                                                                        .role()
                                                                        .code()
                                                                + "(contact|coil),[a-z]+"
                                                                + cavity.id()));
            }
        }
    }

    @ParameterizedTest
    @EnumSource(Paper.class)
    void tellsTheOrderOfWorkWithTheWedgeLast(Paper sheet) {
        String text = dense(SampleKits.small(), sheet);
        assertThat(text)
                .containsSubsequence(
                        "☐1Cut",
                        "☐2Strip",
                        "☐3Sealon",
                        "☐4Crimp",
                        "☐5Pulltest",
                        "☐6Load",
                        "☐7Tug",
                        "☐8Plug",
                        "☐9Splice",
                        "☐10Wedgelast",
                        "Thatrefusalisthetest",
                        "☐11Close",
                        "commonpractice,nopublishedsource",
                        "Finalchecks",
                        "☐1Cavities",
                        "Builtby");
        assertThat(text).contains("untilitclicks").contains("Frontcrimponthebareconductor");
    }

    /** IEC 60352-2, from memory: 60 N for 0.5 mm2 and 108 N for 1.0 mm2. */
    @Test
    void saysWhatACrimpMustHold() {
        assertThat(dense(SampleKits.small(), Paper.A4))
                .contains("☐0.5mm²BW-T28-S60NIEC60352-2,frommemory")
                .contains("☐1.0mm²BW-T28-S108NIEC60352-2,frommemory");
    }

    @Test
    void saysWhenAKitMustNotBeBuilt() {
        Kit kit =
                PlannedKits.listSamples().stream()
                        .filter(sample -> !sample.isBuildable())
                        .findFirst()
                        .orElseThrow();
        assertThat(dense(kit, Paper.A4)).contains("✘Notbuildable");
    }
}
