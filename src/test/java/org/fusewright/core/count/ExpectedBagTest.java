package org.fusewright.core.count;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.fusewright.catalogs.load.CatalogFolder;
import org.fusewright.core.catalog.BaggedSet;
import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.count.ExpectedBag.Sets;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.PartLine;
import org.fusewright.papers.PlannedKits;
import org.junit.jupiter.api.Test;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

class ExpectedBagTest {
    private static final Catalog CATALOG = CatalogFolder.read(Path.of("catalog-sample")).catalog();
    private static final Kit KIT = PlannedKits.equippedQuad();

    private static Map<PartNumber, BigDecimal> piecesOf(List<ExpectedLine> lines) {
        Map<PartNumber, BigDecimal> pieces = new HashMap<>();
        lines.forEach(line -> pieces.put(line.part(), line.quantity()));
        assertThat(pieces).hasSameSizeAs(lines);
        return pieces;
    }

    @Test
    void asksForEachPartOnceWithItsSpares() {
        Map<PartNumber, BigDecimal> sums = new HashMap<>();
        for (PartLine line : KIT.parts()) {
            sums.merge(line.part().number(), line.quantity(), BigDecimal::add);
        }
        assertThat(piecesOf(ExpectedBag.ofPartsList(KIT)))
                .usingComparatorForType(BigDecimal::compareTo, BigDecimal.class)
                .isEqualTo(sums);
        assertThat(KIT.parts()).hasSizeGreaterThan(sums.size());
    }

    @Test
    void countsWireByItsLeadsAndWeighsTheirLengths() {
        List<ExpectedLine> lines = ExpectedBag.of(KIT, CATALOG, Sets.CLOSED);
        KIT.wire()
                .forEach(
                        wire -> {
                            ExpectedLine line =
                                    lines.stream()
                                            .filter(l -> l.part().equals(wire.wire().number()))
                                            .findAny()
                                            .orElseThrow();
                            assertThat(line.quantity().intValue()).isEqualTo(wire.leads().size());
                            assertThat(line.unit()).isEqualTo("leads");
                            assertThat(line.cutsMm().stream().mapToLong(Long::longValue).sum())
                                    .isEqualTo(wire.total().value());
                            assertThat(line.masses().totalG())
                                    .isCloseTo(
                                            wire.wire().massG() * wire.total().value() / 1000,
                                            within(1e-9));
                        });
    }

    @Test
    void weighsWhatTheKitWeighs() {
        double totalG =
                ExpectedBag.of(KIT, CATALOG, Sets.CLOSED).stream()
                        .mapToDouble(line -> line.masses().totalG())
                        .sum();
        assertThat(totalG).isCloseTo(KIT.totals().massG(), within(1e-6));
    }

    @Test
    void countsWhatOpenedSetsHold() {
        PartLine set =
                KIT.parts().stream()
                        .filter(line -> line.part() instanceof BaggedSet)
                        .findFirst()
                        .orElseThrow();
        Map<PartNumber, BigDecimal> closed = piecesOf(ExpectedBag.of(KIT, CATALOG, Sets.CLOSED));
        Map<PartNumber, BigDecimal> opened = piecesOf(ExpectedBag.of(KIT, CATALOG, Sets.OPENED));
        assertThat(closed).containsKey(set.part().number());
        assertThat(opened).doesNotContainKey(set.part().number());
        for (BaggedSet.Content content : set.contains()) {
            int more =
                    opened.get(content.part())
                            .subtract(closed.getOrDefault(content.part(), BigDecimal.ZERO))
                            .intValue();
            assertThat(more).isGreaterThanOrEqualTo(content.quantity() * set.quantity().intValue());
        }
    }

    @Test
    void knowsWhichLeadsASealMustTake() {
        ExpectedBag.of(KIT, CATALOG, Sets.CLOSED).stream()
                .filter(line -> line.kind() == CountedKind.SEAL)
                .forEach(line -> assertThat(line.leads()).isPresent());
        assertThat(ExpectedBag.of(KIT, CATALOG, Sets.CLOSED))
                .anySatisfy(line -> assertThat(line.kind()).isEqualTo(CountedKind.SEAL));
    }
}
