package org.fusewright.core.sizing;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.core.TestStock;
import org.fusewright.core.sizing.SpliceChoice.Joint;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Splices of the stock: J1 up to 3 leads and 1 to 4.5 mm2, J2 4 and 2.5 to 10, J3 6 and 6 to 22, J4
 * 6 and 16 to 45. Drawn as "part x leads", "!" when the part only stands in.
 */
class SpliceChoiceTest {

    private final SpliceChoice splices = new SpliceChoice(TestStock.usual().build());

    @ParameterizedTest(name = "{0} mm2 to {1}: {2}")
    @CsvSource({
        "1, 1 1, J1x3",
        "2.5, 1 1, J1x3",
        "2.5, 1.5 1, J2x3",
        "1, 1 1 1, J2x4",
        "6, 6 6, J3x3",
        "16, 6 6, J4x3",
        // 2 mm2 on four leads: too little for J2, so two small ones.
        "0.5, 0.5 0.5 0.5, J1x3 J1x3",
        // Nine leads of 2.5 mm2: 22.5 mm2 are too much for J3, six of them are not.
        "2.5, 2.5 2.5 2.5 2.5 2.5 2.5 2.5 2.5, J3x6 J3x5",
        // A chain that left one lead for its last splice would join nothing: 2 mm2 stay too little.
        "0.5, 0.5 0.5 0.5 0.5, J1x3 J1x3 J1x3",
        "0.75, 0.5 0.5 0.5 0.35, J2x4 J1x3",
        // Nothing takes 48 mm2, or three hair-thin leads.
        "16, 16 16, J4x3!",
        "0.22, 0.22 0.22, J1x3!",
    })
    void takesTheCheapestThatHoldsLeadsAndCopper(String inMm2, String outMm2, String drawn) {
        double[] out = Arrays.stream(outMm2.split(" ")).mapToDouble(Double::parseDouble).toArray();

        List<Joint> chain = splices.arrange(out, Double.parseDouble(inMm2));

        assertThat(
                        chain.stream()
                                .map(
                                        j ->
                                                j.part().number()
                                                        + "x"
                                                        + j.leads()
                                                        + (j.fits() ? "" : "!"))
                                .collect(Collectors.joining(" ")))
                .isEqualTo(drawn);
        int next = 0;
        for (Joint joint : chain) {
            assertThat(joint.from()).isEqualTo(next);
            next = joint.to();
            assertThat(joint.linksOn()).isEqualTo(next < out.length);
        }
        assertThat(next).isEqualTo(out.length);
    }
}
