package org.fusewright.core.quote;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.job.Job;
import org.junit.jupiter.api.Test;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

class QuoteChangesTest {
    private static final Job QUAD = SampleQuotes.job("01-trail-quad");

    @Test
    void findsNothingBetweenEqualRevisions() {
        Quote quote = SampleQuotes.quad(2, VariantKind.FUSES);
        assertThat(QuoteChanges.between(quote, quote).isNothing()).isTrue();
    }

    @Test
    void tellsEachLineThatHasAnotherQuantityOrPrice() {
        Quote one = SampleQuotes.quad(1, VariantKind.FUSES);
        Quote two = SampleQuotes.of(2, QUAD, SampleQuotes.wishes(2, VariantKind.FUSES));
        QuoteChanges changes = QuoteChanges.between(one, two);
        assertThat(changes.sinceRevision()).isEqualTo(1);
        Variant before = one.variants().getFirst();
        Variant after = two.variants().getFirst();
        assertThat(changes.facts())
                .extracting(QuoteChangesTest::words)
                .contains(
                        "Kits: 1 > 2",
                        "All fuses, total: " + before.total() + " > " + after.total());
        // Every part and every task is needed twice as often; the parcel stays one.
        long doubled =
                after.lines().stream().filter(line -> line.kind() != LineKind.SHIPPING).count();
        assertThat(changes.lines())
                .filteredOn(line -> line.any().kind() != LineKind.SHIPPING)
                .hasSize((int) doubled)
                .allSatisfy(
                        line ->
                                assertThat(line.after().orElseThrow().quantity())
                                        .isEqualByComparingTo(
                                                line.before()
                                                        .orElseThrow()
                                                        .quantity()
                                                        .multiply(new BigDecimal(2))));
    }

    @Test
    void tellsLinesThatComeAndGo() {
        Quote both = SampleQuotes.quad(1, VariantKind.AS_ASKED);
        Job pumpOnly = QUAD.withCircuits(List.of(QUAD.circuits().getFirst()));
        Quote less = SampleQuotes.of(2, pumpOnly, SampleQuotes.wishes(1, VariantKind.AS_ASKED));
        List<String> wentBoth = codes(both);
        List<String> inLess = codes(less);
        assertThat(codes(QuoteChanges.between(both, less), QuoteChanges.Line::after))
                .containsExactlyInAnyOrderElementsOf(
                        wentBoth.stream().filter(code -> !inLess.contains(code)).toList())
                .isNotEmpty();
        assertThat(codes(QuoteChanges.between(less, both), QuoteChanges.Line::before))
                .containsExactlyInAnyOrderElementsOf(
                        wentBoth.stream().filter(code -> !inLess.contains(code)).toList());
    }

    private static List<String> codes(Quote quote) {
        return quote.variants().getFirst().lines().stream().map(QuoteChangesTest::key).toList();
    }

    private static List<String> codes(
            QuoteChanges changes, Function<QuoteChanges.Line, Optional<QuoteLine>> missing) {
        return changes.lines().stream()
                .filter(line -> missing.apply(line).isEmpty())
                .map(line -> key(line.any()))
                .toList();
    }

    private static String key(QuoteLine line) {
        return line.group() + " " + line.code();
    }

    @Test
    void tellsVariantsThatComeAndGoAndDevicesThatDiffer() {
        Quote fuses = SampleQuotes.quad(1, VariantKind.FUSES, VariantKind.AS_ASKED);
        Job lampsFused =
                QUAD.withCircuits(
                        Stream.of(
                                        QUAD.circuits().getFirst(),
                                        QUAD.circuits()
                                                .getLast()
                                                .withDevices(List.of(DeviceKind.FUSE)))
                                .toList());
        Quote other =
                SampleQuotes.of(
                        2,
                        lampsFused,
                        SampleQuotes.wishes(1, VariantKind.AS_ASKED, VariantKind.SOLID_STATE));
        assertThat(QuoteChanges.between(fuses, other).facts())
                .extracting(QuoteChangesTest::words)
                .contains(
                        "All fuses: offered > not offered",
                        "Solid-state: not offered > offered",
                        "As asked for, device of Work lamps: auto-reset 5 A > fuse 5 A");
    }

    private static String words(QuoteChanges.Fact fact) {
        return "%s: %s > %s"
                .formatted(fact.what().english(), fact.before().english(), fact.after().english());
    }

    @Test
    void keepsQuietAboutWhatOnlyTheShopSees() {
        Quote quote = SampleQuotes.quad(1, VariantKind.FUSES);
        Quote cheaperToBuy = withSource(quote, "ELSEWHERE");
        assertThat(cheaperToBuy).isNotEqualTo(quote);
        assertThat(QuoteChanges.between(quote, cheaperToBuy).isNothing()).isTrue();
    }

    private static Quote withSource(Quote quote, String source) {
        Variant variant = quote.variants().getFirst();
        List<QuoteLine> lines =
                variant.lines().stream()
                        .map(
                                line ->
                                        new QuoteLine(
                                                line.kind(),
                                                line.group(),
                                                line.code(),
                                                line.title(),
                                                line.detail(),
                                                line.quantity(),
                                                line.unit(),
                                                line.unitCost().multipliedBy(2),
                                                source,
                                                line.markUpPercent(),
                                                line.unitPrice(),
                                                line.per(),
                                                line.cost().multipliedBy(2),
                                                line.price()))
                        .toList();
        return new Quote(
                quote.number(),
                quote.revision(),
                quote.quotedOn(),
                quote.validUntil(),
                quote.job(),
                quote.kits(),
                quote.currency(),
                quote.tax(),
                quote.shipped(),
                List.of(
                        new Variant(
                                variant.kind(),
                                variant.fingerprint(),
                                variant.passes(),
                                variant.cautions(),
                                variant.fails(),
                                variant.warnings(),
                                variant.protections(),
                                variant.blocks(),
                                variant.massG(),
                                lines,
                                variant.gaps(),
                                variant.net(),
                                variant.tax(),
                                variant.total(),
                                variant.cost().multipliedBy(2))),
                quote.terms(),
                quote.notIncluded());
    }
}
