package org.fusewright.core.count;

import org.fusewright.core.catalog.PartNumber;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/** Lines of a bag made up for tests. */
final class Bench {

    private Bench() {}

    static ExpectedLine line(String part, CountedKind kind, int pieces, double eachG) {
        return new ExpectedLine(
                new PartNumber(part),
                part + " title",
                new Likeness(kind, "", ""),
                BigDecimal.valueOf(pieces),
                ExpectedLine.EACH,
                List.of(),
                List.of(),
                Masses.alike(pieces, eachG),
                Optional.empty());
    }

    static ExpectedLine leads(String part, Long... cutsMm) {
        return new ExpectedLine(
                new PartNumber(part),
                part + " title",
                new Likeness(CountedKind.WIRE, "RD", ""),
                BigDecimal.valueOf(cutsMm.length),
                ExpectedLine.LEADS,
                List.of(),
                List.of(cutsMm),
                Masses.of(List.of(cutsMm).stream().map(mm -> mm / 1000.0 * 8).toList()),
                Optional.empty());
    }
}
