package org.fusewright.core.sizing;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.job.ArrangementKind;
import org.fusewright.core.job.Choices;
import org.fusewright.core.quantity.Metres;
import org.fusewright.core.quantity.Millimetres;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import java.util.List;
import java.util.Optional;

/** Common practice, no published source. */
class CutLengthTest {

    @ParameterizedTest(name = "{0} m, {1} %, ends {2} mm, step {3} mm: {4} mm")
    @CsvSource({
        "1.1, 5, 40, 10, 1240",
        "1.0, 0, 0, 10, 1000",
        "1.0, 0, 0, 7, 1001",
        "1.0, 10, 50, 1, 1200",
        "0.001, 0, 0, 10, 10",
        "0, 5, 40, 25, 100",
        "0, 0, 0, 10, 10",
        // 0.7 m and 10 % is 770 mm, whatever the arithmetic says in its last digit.
        "0.7, 10, 0, 10, 770",
    })
    void roundsUpToTheStep(double routeM, double slack, long endMm, long stepMm, long cutMm) {
        Choices choices =
                new Choices(
                        List.of(DeviceKind.FUSE),
                        Optional.empty(),
                        true,
                        true,
                        0,
                        0,
                        slack,
                        new Millimetres(endMm),
                        new Millimetres(stepMm),
                        new Millimetres(150),
                        new Millimetres(100),
                        ArrangementKind.CHEAPEST);

        assertThat(CutLength.of(new Metres(routeM), choices)).isEqualTo(new Millimetres(cutMm));
    }
}
