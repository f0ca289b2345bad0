package org.fusewright.core.kit;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.catalogs.load.CatalogFolder;
import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.catalog.Relay;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Verdict;
import org.fusewright.jobs.load.JobReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** The facts of the trade in whole kits; each is common practice, no published source. */
class KitFactsTest {

    private static final KitPlanner PLANNER =
            KitPlanner.of(CatalogFolder.read(Path.of("catalog-sample")).catalog());

    /** Two terminals a position; a relay takes two positions of a block that has a relay pair. */
    @ParameterizedTest(name = "{0} devices and {1} relays: {2}")
    @CsvSource({
        "3, 0, 3", "4, 0, 4", "1, 1, 4", "2, 1, 4", "5, 0, 8", "3, 1, 8", "4, 2, 8", "7, 0, 8",
    })
    void fitsDevicesAndRelaysIntoBlocks(int devices, int relays, String positions) {
        Kit kit = plan(devices, relays, "fuse", "");

        assertThat(
                        kit.blocks().stream()
                                .map(block -> String.valueOf(block.block().positions()))
                                .sorted()
                                .collect(Collectors.joining(" ")))
                .isEqualTo(positions);
        assertThat(kit.blocks())
                .allSatisfy(
                        block -> {
                            assertThat(block.cavities()).hasSize(2 * block.block().positions());
                            if (block.block().positions() == 3) {
                                assertThat(block.seats())
                                        .noneMatch(seat -> seat.part() instanceof Relay);
                            }
                        });
    }

    @Test
    void givesAThreePositionBlockSixTerminalsAndAFourPositionBlockEight() {
        assertThat(terminals(plan(3, 0, "fuse", ""))).isEqualTo(6);
        assertThat(terminals(plan(4, 0, "fuse", ""))).isEqualTo(8);
    }

    @ParameterizedTest(name = "{0} under a cap that clears {1} mm")
    @CsvSource({"fuse, 12", "manual-reset, 24", "auto-reset, 24"})
    void putsBreakersUnderTheTallCapAndFusesUnderTheShortOne(String kind, double clearanceMm) {
        Kit kit = plan(2, 0, kind, "");

        assertThat(kit.blocks().getFirst().cap().clearanceMm()).isEqualTo(clearanceMm);
    }

    @ParameterizedTest(name = "{0}: steps of {1} A")
    @CsvSource({"auto-reset, 5", "manual-reset, 0.5"})
    void takesTheRatingsThatAKindComesIn(String kind, double stepA) {
        for (double amps = 0.5; amps <= 18; amps += 0.5) {
            Kit kit = plan(load("{\"kind\":\"resistive\",\"amps\":" + amps + "}"), kind, "");
            Device device = kit.circuits().getFirst().sized().device().orElseThrow();
            assertThat(device.kind().code()).isEqualTo(kind);
            assertThat(device.ratingA() % stepA).as(amps + " A").isZero();
        }
    }

    @Test
    void shipsSpareFusesEvenWhereTheKitUsesBreakers() {
        Kit kit = plan(2, 0, "auto-reset", ",\"choices\":{\"spareFusesPerRating\":3}");

        assertThat(kit.parts())
                .filteredOn(line -> line.group() == PartGroup.SPARE)
                .isNotEmpty()
                .allSatisfy(
                        line -> {
                            assertThat(((Device) line.part()).kind()).isEqualTo(DeviceKind.FUSE);
                            assertThat(line.quantity()).isEqualByComparingTo("3");
                        });
    }

    @Test
    void splicesOutsideTheBlockWhateverSharesACavity() {
        Kit kit =
                plan(
                        load(
                                "{\"kind\":\"led\",\"watts\":10},"
                                        + "{\"kind\":\"led\",\"watts\":10,\"count\":2}"),
                        "fuse",
                        "");
        KitCircuit circuit = kit.circuits().getFirst();

        assertThat(circuit.sized().splices()).hasSize(1);
        assertThat(circuit.sized().splices().getFirst().leads()).isEqualTo(4);
        assertThat(circuit.leads())
                .filteredOn(lead -> lead.from().startsWith("B1-"))
                .singleElement()
                .satisfies(lead -> assertThat(lead.from()).isEqualTo("B1-1b"));
    }

    @Test
    void warnsOfADeviceThatStartsAPumpAgainByItself() {
        String pump = load("{\"kind\":\"pump\",\"amps\":3}");

        assertThat(verdicts(plan(pump, "auto-reset", ""), CheckCode.AUTOMATIC_RESTART))
                .contains(Verdict.CAUTION);
        assertThat(verdicts(plan(pump, "fuse", ""), CheckCode.AUTOMATIC_RESTART))
                .doesNotContain(Verdict.CAUTION, Verdict.FAIL);
    }

    @ParameterizedTest(name = "wedge {0}, plugs {1}: {2} wedges, {3} plugs")
    @CsvSource({"true, true, 1, 2", "false, true, 0, 2", "true, false, 1, 0"})
    void leavesOutWhatTheJobLeavesOut(boolean wedge, boolean plugs, int wedges, int plugCount) {
        String choices =
                ",\"choices\":{\"lockingWedge\":" + wedge + ",\"plugEmptyCavities\":" + plugs + "}";
        KitBlock block = plan(2, 0, "fuse", choices).blocks().getFirst();

        assertThat(block.wedge().stream().count()).isEqualTo(wedges);
        assertThat(block.cavities().stream().filter(c -> c.plug().isPresent()).count())
                .isEqualTo(plugCount);
    }

    @Test
    void keepsAskedForPositionsFree() {
        Kit kit = plan(3, 0, "fuse", ",\"choices\":{\"sparePositions\":2}");

        int positions = kit.blocks().stream().mapToInt(b -> b.block().positions()).sum();
        assertThat(positions - 3).isGreaterThanOrEqualTo(2);
    }

    @Test
    void addsUpItsLines() {
        Kit kit = plan(6, 2, "auto-reset", "");

        BigDecimal sum =
                kit.parts().stream()
                        .map(line -> line.extended().getAmount())
                        .reduce(BigDecimal.ZERO, BigDecimal::add);
        assertThat(kit.totals().parts().getAmount()).isEqualByComparingTo(sum);
    }

    private static long terminals(Kit kit) {
        return kit.blocks().stream()
                .flatMap(block -> block.cavities().stream())
                .flatMap(cavity -> cavity.occupant().stream())
                .flatMap(occupant -> occupant.terminal().stream())
                .count();
    }

    private static List<Verdict> verdicts(Kit kit, CheckCode code) {
        return kit.checks().stream()
                .filter(check -> check.code() == code)
                .map(Check::verdict)
                .toList();
    }

    private static String load(String loads) {
        return "[{\"id\":\"c1\",\"feed\":\"battery\",\"runM\":1,\"returnPath\":\"chassis\",\"loads\":["
                + loads
                + "]}]";
    }

    /** So many circuits of 3 A each; the first of them with a relay. */
    private static Kit plan(int devices, int relays, String kind, String more) {
        String circuits =
                IntStream.range(0, devices)
                        .mapToObj(
                                i ->
                                        "{\"id\":\"c"
                                                + i
                                                + "\",\"feed\":\"battery\",\"runM\":1,"
                                                + (i < relays
                                                        ? "\"relay\":{\"triggerFrom\":\"controller\","
                                                              + "\"triggerM\":1,\"groundM\":1},"
                                                        : "")
                                                + "\"returnPath\":\"chassis\",\"loads\":"
                                                + "[{\"kind\":\"resistive\",\"amps\":3}]}")
                        .collect(Collectors.joining(",", "[", "]"));
        return plan(circuits, kind, more);
    }

    private static Kit plan(String circuits, String kind, String more) {
        String choices = more.isEmpty() ? ",\"choices\":{}" : more;
        String job =
                ("{\"reference\":\"F-1\",\"supply\":{\"nominalV\":12},\"feeds\":[{\"id\":\"battery\","
                     + "\"terminal\":\"30\",\"lengthM\":0.6,\"sourceDistanceM\":0.1}],\"circuits\":"
                                + circuits
                                + choices
                                + "}")
                        .replace("\"choices\":{", "\"choices\":{\"devices\":[\"" + kind + "\"],")
                        .replace(",}", "}");
        return PLANNER.plan(JobReader.read(job.getBytes(StandardCharsets.UTF_8)).getJob());
    }
}
