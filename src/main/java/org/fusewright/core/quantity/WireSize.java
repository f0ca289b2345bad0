package org.fusewright.core.quantity;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The size of a conductor as its standard names it, with its copper area. A gauge is never just a
 * number: 12 AWG holds 6,530 circular mils (ASTM B258), 12 gauge of SAE J1128 only 5,833.
 *
 * <ul>
 *   <li>{@code METRIC}: nominal area in mm2 (ISO 6722, IEC 60228), written "1.5 mm2";
 *   <li>{@code AWG}: area by the definition in ASTM B258, d = 0.005 in x 92^((36-n)/39), written
 *       "16 AWG" or "2/0 AWG";
 *   <li>{@code SAE}: minimum area by SAE J1128 in circular mils, written "16 SAE". Gauges 18 to 10
 *       are as published; 20 and 8 to 4/0 are from memory.
 * </ul>
 */
public record WireSize(Standard standard, String label, double areaMm2)
        implements Comparable<WireSize> {

    /** The standard that gives a size its meaning. */
    public enum Standard {
        METRIC,
        AWG,
        SAE
    }

    private static final double MM2_PER_CIRCULAR_MIL = Math.PI / 4 * 0.0254 * 0.0254;

    private static final Map<String, Integer> SAE_MINIMUM_CIRCULAR_MILS =
            Map.ofEntries(
                    Map.entry("20", 1_020),
                    Map.entry("18", 1_537),
                    Map.entry("16", 2_336),
                    Map.entry("14", 3_702),
                    Map.entry("12", 5_833),
                    Map.entry("10", 9_343),
                    Map.entry("8", 14_810),
                    Map.entry("6", 25_910),
                    Map.entry("4", 37_360),
                    Map.entry("2", 62_450),
                    Map.entry("1", 77_790),
                    Map.entry("1/0", 98_980),
                    Map.entry("2/0", 125_100),
                    Map.entry("3/0", 158_600),
                    Map.entry("4/0", 205_500));

    private static final Pattern METRIC_FORM =
            Pattern.compile("(\\d{1,3}(?:\\.\\d{1,3})?)\\s?mm[2²]");
    private static final Pattern GAUGE_FORM =
            Pattern.compile("(\\d{1,2}|[1-4]/0)\\s?(AWG|SAE)", Pattern.CASE_INSENSITIVE);

    public WireSize {
        if (!(areaMm2 > 0) || !Double.isFinite(areaMm2)) {
            throw new IllegalArgumentException("a wire needs copper: " + areaMm2 + " mm2");
        }
    }

    /** A metric size by its nominal area. */
    public static WireSize ofMetric(BigDecimal areaMm2) {
        BigDecimal plain = areaMm2.stripTrailingZeros();
        int decimals = Math.max(plain.scale(), plain.compareTo(BigDecimal.TEN) < 0 ? 1 : 0);
        String label = plain.setScale(decimals, RoundingMode.UNNECESSARY).toPlainString() + " mm2";
        return new WireSize(Standard.METRIC, label, plain.doubleValue());
    }

    /** An American Wire Gauge size; 1/0 to 4/0 are numbers 0 to -3. */
    public static WireSize ofAwg(int number) {
        if (number < -3 || number > 40) {
            throw new IllegalArgumentException("AWG runs from 4/0 (-3) to 40, not " + number);
        }
        double diameterInch = 0.005 * Math.pow(92, (36 - number) / 39.0);
        double circularMils = diameterInch * diameterInch * 1e6;
        String gauge = number > 0 ? Integer.toString(number) : (1 - number) + "/0";
        return new WireSize(Standard.AWG, gauge + " AWG", circularMils * MM2_PER_CIRCULAR_MIL);
    }

    /** An SAE J1128 gauge at its minimum copper area. */
    public static WireSize ofSae(String gauge) {
        Integer circularMils = SAE_MINIMUM_CIRCULAR_MILS.get(gauge);
        if (circularMils == null) {
            throw new IllegalArgumentException("no SAE J1128 gauge " + gauge);
        }
        return new WireSize(Standard.SAE, gauge + " SAE", circularMils * MM2_PER_CIRCULAR_MIL);
    }

    /** Reads "1.5 mm2", "16 AWG", "2/0 AWG" or "16 SAE"; empty when it is none of these. */
    public static Optional<WireSize> parse(String text) {
        String trimmed = text.trim();
        Matcher metric = METRIC_FORM.matcher(trimmed);
        if (metric.matches()) {
            BigDecimal area = new BigDecimal(metric.group(1));
            return area.signum() > 0 ? Optional.of(ofMetric(area)) : Optional.empty();
        }
        Matcher gauge = GAUGE_FORM.matcher(trimmed);
        if (!gauge.matches()) {
            return Optional.empty();
        }
        String number = gauge.group(1);
        if (gauge.group(2).equalsIgnoreCase("SAE")) {
            return SAE_MINIMUM_CIRCULAR_MILS.containsKey(number)
                    ? Optional.of(ofSae(number))
                    : Optional.empty();
        }
        int awg =
                number.endsWith("/0")
                        ? 1 - Integer.parseInt(number.substring(0, 1))
                        : Integer.parseInt(number);
        return awg <= 40 ? Optional.of(ofAwg(awg)) : Optional.empty();
    }

    /** Copper area in circular mils, the unit of North American tables. */
    public double circularMils() {
        return areaMm2 / MM2_PER_CIRCULAR_MIL;
    }

    /** Thinner first; sizes of equal area by label. */
    @Override
    public int compareTo(WireSize other) {
        int byArea = Double.compare(areaMm2, other.areaMm2);
        return byArea != 0 ? byArea : label.compareTo(other.label);
    }

    @Override
    public String toString() {
        return label;
    }
}
