package org.fusewright.core.count;

import org.fusewright.core.catalog.PartNumber;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What turns a bag of one design into a bag of another one. Leads are told apart by their cut
 * lengths: one that became longer is both taken back and added.
 */
public record BagDifference(List<Entry> toAdd, List<Entry> toTakeBack) {

    /** So much of a part; for leads, the cut length of each. */
    public record Entry(
            PartNumber part, String title, BigDecimal quantity, String unit, List<Long> cutsMm) {

        public Entry {
            cutsMm = List.copyOf(cutsMm);
        }
    }

    public BagDifference {
        toAdd = List.copyOf(toAdd);
        toTakeBack = List.copyOf(toTakeBack);
    }

    public static BagDifference between(List<ExpectedLine> packed, List<ExpectedLine> wanted) {
        return new BagDifference(listMore(packed, wanted), listMore(wanted, packed));
    }

    public boolean isNothing() {
        return toAdd.isEmpty() && toTakeBack.isEmpty();
    }

    /** What the second has and the first has not, or has less of. */
    private static List<Entry> listMore(List<ExpectedLine> first, List<ExpectedLine> second) {
        Map<PartNumber, ExpectedLine> had = new HashMap<>();
        first.forEach(line -> had.put(line.part(), line));
        Set<Entry> more = new LinkedHashSet<>();
        for (ExpectedLine line : second) {
            ExpectedLine before = had.get(line.part());
            if (line.unit().equals(ExpectedLine.LEADS)) {
                List<Long> cuts = new ArrayList<>(line.cutsMm());
                if (before != null) {
                    before.cutsMm().forEach(cuts::remove);
                }
                if (!cuts.isEmpty()) {
                    more.add(entry(line, BigDecimal.valueOf(cuts.size()), cuts));
                }
            } else {
                BigDecimal quantity =
                        line.quantity()
                                .subtract(before == null ? BigDecimal.ZERO : before.quantity());
                if (quantity.signum() > 0) {
                    more.add(entry(line, quantity, List.of()));
                }
            }
        }
        return List.copyOf(more);
    }

    private static Entry entry(ExpectedLine line, BigDecimal quantity, List<Long> cutsMm) {
        return new Entry(line.part(), line.title(), quantity, line.unit(), cutsMm);
    }
}
