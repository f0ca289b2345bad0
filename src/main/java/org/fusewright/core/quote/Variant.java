package org.fusewright.core.quote;

import org.fusewright.core.catalog.PartNumber;
import org.joda.money.Money;

import java.math.BigDecimal;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * One way of building the job, priced.
 *
 * @param fingerprint names its design
 * @param passes how many checks pass; likewise the next two
 * @param warnings what the checks say that caution or fail
 * @param blocks sealed blocks in one kit
 * @param massG of all kits together, in whole grams, rounded up
 * @param gaps what is missing in the shop's settings and so in the price, and what is not proven
 * @param net sum of the lines
 * @param tax on the net sum, rounded half up once
 * @param cost sum of the lines' costs
 */
public record Variant(
        VariantKind kind,
        String fingerprint,
        int passes,
        int cautions,
        int fails,
        List<String> warnings,
        List<Protection> protections,
        int blocks,
        long massG,
        List<QuoteLine> lines,
        List<String> gaps,
        Money net,
        Money tax,
        Money total,
        Money cost) {

    /** What protects one circuit. */
    public record Protection(String circuit, String title, String device) {

        /** The code of the kind of device, which its text begins with. */
        public String kind() {
            return device.substring(0, device.indexOf(' '));
        }
    }

    public Variant {
        warnings = List.copyOf(warnings);
        protections = List.copyOf(protections);
        lines = List.copyOf(lines);
        gaps = List.copyOf(gaps);
    }

    /** What all kits together need of each part: metres of wire, pieces of everything else. */
    public SortedMap<PartNumber, BigDecimal> demand() {
        SortedMap<PartNumber, BigDecimal> demand = new TreeMap<>();
        for (QuoteLine line : lines) {
            if (line.kind() == LineKind.PART) {
                demand.merge(new PartNumber(line.code()), line.quantity(), BigDecimal::add);
            }
        }
        return demand;
    }
}
