package org.fusewright.core.sizing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.fusewright.core.TestJob;
import org.fusewright.core.job.Duty;
import org.fusewright.core.job.Inrush;
import org.fusewright.core.job.Load;
import org.fusewright.core.job.LoadKind;
import org.fusewright.core.job.Supply;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

class RunningCurrentTest {

    private static final Supply SUPPLY = new Supply(12, 10, 14.4, 15, OptionalDouble.empty());

    private static Load load(LoadKind kind, double amps, Inrush inrush) {
        return TestJob.load("L", kind, amps, inrush, Duty.CONTINUOUS);
    }

    /**
     * 10 A at 12 V, between 10 V and 14.4 V: a resistor has a fifth more at 14.4 V, constant power
     * a fifth more at 10 V. 1.2 to the power of 0.55 is 1.1055 (the exponent of lamps is common
     * practice).
     */
    @ParameterizedTest(name = "{0}: {1} A")
    @CsvSource({
        "RESISTIVE, 12",
        "FILAMENT_LAMP, 11.055",
        "LED, 12",
        "ELECTRONIC, 12",
        "MOTOR, 10",
        "PUMP, 10",
        "COIL, 12",
        "SOCKET, 10"
    })
    void takesTheWorstOfBothEnds(LoadKind kind, double worstA) {
        assertThat(RunningCurrent.worstA(load(kind, 10, kind.usualInrush()), SUPPLY))
                .isCloseTo(worstA, within(5e-4));
    }

    @Test
    void startsEachLoadAtItsMultipleAndTheOthersRunning() {
        StartUp startUp =
                StartUp.of(
                        List.of(
                                single(2, new Inrush(20, 1)),
                                single(3, new Inrush(6, 300)),
                                single(4, new Inrush(1, 0))));

        assertThat(startUp.steps())
                .containsExactly(
                        new StartUp.Step(2 * 20 + 3 * 6 + 4, 0.001),
                        new StartUp.Step(2 + 3 * 6 + 4, 0.3));
        assertThat(startUp.peakA()).isEqualTo(62);
    }

    private static SingleLoad single(double amps, Inrush inrush) {
        return new SingleLoad("L", load(LoadKind.SOCKET, amps, inrush), amps);
    }

    @Test
    void hasNoStartWhenNothingDrawsMore() {
        assertThat(StartUp.of(List.of(single(5, new Inrush(1, 0)))).steps()).isEmpty();
        assertThat(StartUp.of(List.of(single(5, new Inrush(1, 0)))).peakA()).isEqualTo(5);
    }

    /**
     * Multiples of relay application tables, of AC 43.13-1B 11-53 d and of switch makers: each kind
     * of load starts with a multiple inside each of its rows, but for the circular's 15 of lamps,
     * where ours is 12. Lamps of the street and transformers are no loads of a vehicle.
     */
    @ParameterizedTest(name = "{0}: {1} to {2}, {3} ({4})")
    @CsvFileSource(resources = "/facts/load_inrush.csv", numLinesToSkip = 1)
    void startsWithinThePublishedRange(
            String load, double low, double high, String source, String status) {
        Optional<LoadKind> kind =
                switch (load) {
                    case "resistive" -> Optional.of(LoadKind.RESISTIVE);
                    case "incandescent lamp" -> Optional.of(LoadKind.FILAMENT_LAMP);
                    case "motor", "motor (switch maker rule)" -> Optional.of(LoadKind.MOTOR);
                    case "solenoid" -> Optional.of(LoadKind.COIL);
                    case "capacitive" -> Optional.of(LoadKind.ELECTRONIC);
                    default -> Optional.empty();
                };

        if (kind.isEmpty()) {
            assertThat(LoadKind.parse(load.replace(' ', '-'))).isEmpty();
        } else {
            double ours = kind.get().usualInrush().multiple();
            boolean lampOfTheCircular = source.contains("AC 43.13-1B");
            assertThat(ours).isBetween(lampOfTheCircular ? 0.8 * low : low, high);
        }
        assertThat(status).isEqualTo("SEEN");
    }
}
