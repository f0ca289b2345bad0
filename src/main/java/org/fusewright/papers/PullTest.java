package org.fusewright.papers;

import org.fusewright.core.quantity.WireSize;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;

import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * The force that a crimp of a size must hold at least, in newtons.
 *
 * <ul>
 *   <li>American Wire Gauge: UL 486A, as a terminal maker's application specification prints it;
 *   <li>every other size: IEC 60352-2 by copper area, from memory; between two areas of the table
 *       the smaller one's force, so that no good crimp is turned down.
 * </ul>
 *
 * Other sizes have no published force here: 2/0 AWG neither, whose figure the specification
 * misprints.
 *
 * @param leastN in newtons
 */
record PullTest(double leastN, Text source) {

    private static final Text AWG_SOURCE = Text.verbatim("UL 486A");
    private static final Text AREA_SOURCE = Phrase.of("print.pull-test.iec");

    private static final Map<String, Double> BY_AWG =
            Map.ofEntries(
                    Map.entry("26 AWG", 13.4),
                    Map.entry("24 AWG", 22.3),
                    Map.entry("22 AWG", 35.6),
                    Map.entry("20 AWG", 57.9),
                    Map.entry("18 AWG", 89.0),
                    Map.entry("16 AWG", 133.5),
                    Map.entry("14 AWG", 222.5),
                    Map.entry("12 AWG", 311.5),
                    Map.entry("10 AWG", 356.0),
                    Map.entry("8 AWG", 400.5),
                    Map.entry("6 AWG", 445.0),
                    Map.entry("4 AWG", 623.0),
                    Map.entry("2 AWG", 801.0),
                    Map.entry("1/0 AWG", 1112.5));

    private static final NavigableMap<Double, Double> BY_AREA_MM2 =
            new TreeMap<>(
                    Map.ofEntries(
                            Map.entry(0.05, 6.0),
                            Map.entry(0.08, 11.0),
                            Map.entry(0.12, 15.0),
                            Map.entry(0.14, 18.0),
                            Map.entry(0.22, 28.0),
                            Map.entry(0.25, 32.0),
                            Map.entry(0.32, 40.0),
                            Map.entry(0.5, 60.0),
                            Map.entry(0.75, 85.0),
                            Map.entry(0.82, 90.0),
                            Map.entry(1.0, 108.0),
                            Map.entry(1.3, 135.0),
                            Map.entry(1.5, 150.0),
                            Map.entry(2.1, 200.0),
                            Map.entry(2.5, 230.0),
                            Map.entry(3.3, 275.0),
                            Map.entry(4.0, 310.0),
                            Map.entry(5.3, 355.0),
                            Map.entry(6.0, 360.0),
                            Map.entry(8.4, 370.0),
                            Map.entry(10.0, 380.0)));

    static Optional<PullTest> find(WireSize size) {
        if (size.standard() == WireSize.Standard.AWG) {
            return Optional.ofNullable(BY_AWG.get(size.label()))
                    .map(leastN -> new PullTest(leastN, AWG_SOURCE));
        }
        OptionalDouble leastN = findByArea(size.areaMm2());
        return leastN.isPresent()
                ? Optional.of(new PullTest(leastN.getAsDouble(), AREA_SOURCE))
                : Optional.empty();
    }

    private static OptionalDouble findByArea(double areaMm2) {
        Map.Entry<Double, Double> smaller = BY_AREA_MM2.floorEntry(areaMm2);
        return smaller == null || areaMm2 > BY_AREA_MM2.lastKey()
                ? OptionalDouble.empty()
                : OptionalDouble.of(smaller.getValue());
    }
}
