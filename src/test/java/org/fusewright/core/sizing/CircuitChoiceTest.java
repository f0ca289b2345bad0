package org.fusewright.core.sizing;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.core.TestJob;
import org.fusewright.core.TestJob.TestCircuit;
import org.fusewright.core.TestStock;
import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.job.Duty;
import org.fusewright.core.job.Inrush;
import org.fusewright.core.job.LoadKind;
import org.fusewright.core.job.ResolvedJob;
import org.fusewright.core.pricing.Stock;
import org.fusewright.core.words.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;

class CircuitChoiceTest {

    private static final Stock STOCK = TestStock.usual().build();

    private final TestJob job = new TestJob();

    private SizedCircuit sized() {
        return Sizer.size(job.resolve(STOCK)).circuits().getFirst();
    }

    @Test
    void asksTheNextKindAndSaysWhy() {
        job.blockAmbientC = 20;
        job.circuit("c")
                .kinds(DeviceKind.AUTO_RESET, DeviceKind.FUSE)
                .load(
                        TestJob.load(
                                "M",
                                LoadKind.MOTOR,
                                26,
                                new Inrush(200 / 26.0, 16),
                                Duty.MOMENTARY));

        SizedCircuit circuit = sized();

        assertThat(circuit.device().orElseThrow().kind()).isEqualTo(DeviceKind.FUSE);
        assertThat(circuit.why().getFirst().english())
                .startsWith(
                        "No auto-reset: auto-reset 30 A may open at the start current of 200 A");
    }

    /** 5.2 A need 6.5 A and more at 80 %; 3 m of 0.5 mm2 lose over 5 %. */
    @Test
    void namesTheChecksThatTheNextCheaperChoicesFail() {
        job.circuit("c").amps(5.2).runM(3).maxDropPercent(6);

        assertThat(sized().why())
                .singleElement()
                .extracting(Text::english)
                .asString()
                .contains(
                        "The next cheaper device, fuse 5 A, fails running-load: it carries 3.87 A")
                .contains("The next cheaper wire fails voltage-drop: ");
    }

    @Test
    void saysThatTheJobFixesWhatItDoes() {
        job.circuit("c").amps(2).ratingA(10).gauge("2.5 mm2");

        assertThat(sized().why())
                .extracting(Text::english)
                .containsExactly(
                        "fuse 10 A with 2.5 mm2, rating and size fixed by the job: there is no"
                                + " cheaper choice.");
    }

    /** A larger fuse resists less; here that saves the drop, where the wire may not grow. */
    @Test
    void takesALargerDeviceWhereThatSavesTheDrop() {
        job.circuit("c").amps(4).gauge("0.5 mm2").maxDropPercent(3.05);

        assertThat(sized().device().orElseThrow().ratingA()).isEqualTo(10);
    }

    static LongStream seeds() {
        return LongStream.range(0, 24);
    }

    /** Every device below the main one with every trunk and every branch, judged one by one. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void findsNothingCheaperAmongAllCombinations(long seed) {
        Random random = new Random(seed);
        TestCircuit circuit =
                job.circuit("c")
                        .kinds(DeviceKind.FUSE)
                        .runM(0.5 + 3 * random.nextDouble())
                        .maxDropPercent(2 + 6 * random.nextDouble());
        int loads = 1 + random.nextInt(2);
        for (int i = 0; i < loads; i++) {
            double amps = 0.5 + 5 * random.nextDouble();
            circuit.load(LoadKind.SOCKET, amps, 1, 0.2 + 3 * random.nextDouble());
        }
        if (random.nextBoolean()) {
            circuit.wired();
        }
        ResolvedJob resolved = job.resolve(STOCK);
        SizedJob chosen = Sizer.size(resolved);
        boolean passes = Judged.keepsAll(chosen);
        Judged judged = new Judged(STOCK, resolved);
        KeptSizes kept = KeptSizes.of(chosen);
        List<Wire> wires = resolved.circuits().getFirst().wires();

        long least = Long.MAX_VALUE;
        double mainA = chosen.feeds().getFirst().mainDevice().orElseThrow().ratingA();
        for (Device device : STOCK.listBlockDevices(DeviceKind.FUSE)) {
            if (device.ratingA() >= mainA) {
                continue;
            }
            for (Wire trunk : wires) {
                KeptSizes base = kept.withDevice("c", device).withWire("c/out", trunk);
                if (loads == 1) {
                    least = Math.min(least, judged.costIfKept(base));
                    continue;
                }
                for (Wire first : wires) {
                    for (Wire second : wires) {
                        KeptSizes all =
                                base.withWire("c/branch-1", first).withWire("c/branch-2", second);
                        least = Math.min(least, judged.costIfKept(all));
                    }
                }
            }
        }

        assertThat(passes).isEqualTo(least < Long.MAX_VALUE);
        if (passes) {
            assertThat(judged.costMicros(chosen)).isEqualTo(least);
        }
    }
}
