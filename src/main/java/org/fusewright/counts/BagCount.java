package org.fusewright.counts;

import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.count.AgreedSubstitute;
import org.fusewright.core.count.BagDesign;
import org.fusewright.core.count.Comparison;
import org.fusewright.core.count.CountRecord;
import org.fusewright.core.count.ExpectedBag;
import org.fusewright.core.count.ExpectedLine;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One checking of a real bag.
 *
 * @param version moves with everything that is counted, agreed, weighed or signed
 * @param found what lies in the bag of each part, in the order of first finding
 * @param agreed what may stand in, but for what was withdrawn
 */
public record BagCount(
        long id,
        long jobId,
        long version,
        BagDesign design,
        ExpectedBag.Sets sets,
        List<ExpectedLine> expected,
        List<Found> found,
        List<AgreedSubstitute> agreed,
        List<WithdrawnSubstitute> withdrawn,
        List<CountRecord.Done> weighings,
        String startedBy,
        Instant startedAt,
        Optional<CountRecord.Signature> signature) {

    /** So many pieces of a part in the bag. */
    public record Found(PartNumber part, String title, int pieces) {}

    public BagCount {
        expected = List.copyOf(expected);
        found = List.copyOf(found);
        agreed = List.copyOf(agreed);
        withdrawn = List.copyOf(withdrawn);
        weighings = List.copyOf(weighings);
    }

    public Comparison compare() {
        return Comparison.of(expected, pieces(found), agreed);
    }

    static Map<PartNumber, BigDecimal> pieces(List<Found> found) {
        Map<PartNumber, BigDecimal> pieces = new LinkedHashMap<>();
        found.forEach(part -> pieces.put(part.part(), BigDecimal.valueOf(part.pieces())));
        return pieces;
    }

    public int piecesOf(PartNumber part) {
        return found.stream()
                .filter(there -> there.part().equals(part))
                .mapToInt(Found::pieces)
                .sum();
    }

    public boolean isSigned() {
        return signature.isPresent();
    }

    Map<PartNumber, String> titles() {
        Map<PartNumber, String> titles = new LinkedHashMap<>();
        found.forEach(part -> titles.put(part.part(), part.title()));
        return titles;
    }
}
