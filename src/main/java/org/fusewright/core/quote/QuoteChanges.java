package org.fusewright.core.quote;

import org.fusewright.core.words.Exact;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Recall;
import org.fusewright.core.words.Text;
import org.fusewright.core.words.Unit;
import org.joda.money.Money;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * What a revision of a quote changes against an earlier one.
 *
 * @param facts what stands beside the lines: number of kits, tax, terms and the like
 * @param lines in the order of the newer revision, those that fell away last
 */
public record QuoteChanges(int sinceRevision, List<Fact> facts, List<Line> lines) {

    /** A statement that reads differently; empty where there was or is none. */
    public record Fact(Text what, Text before, Text after) {}

    /** A line of a variant that is new, gone, or has another quantity, title or price. */
    public record Line(VariantKind variant, Optional<QuoteLine> before, Optional<QuoteLine> after) {

        /** The line as it is now, or as it was. */
        public QuoteLine any() {
            return after.or(() -> before).orElseThrow();
        }
    }

    private record Key(LineKind kind, String group, String code) {
        static Key of(QuoteLine line) {
            return new Key(line.kind(), line.group(), line.code());
        }
    }

    public QuoteChanges {
        facts = List.copyOf(facts);
        lines = List.copyOf(lines);
    }

    public boolean isNothing() {
        return facts.isEmpty() && lines.isEmpty();
    }

    public static QuoteChanges between(Quote older, Quote newer) {
        List<Line> lines = new ArrayList<>();
        for (Variant variant : newer.variants()) {
            older.findVariant(variant.kind()).ifPresent(before -> addLines(lines, before, variant));
        }
        return new QuoteChanges(older.revision(), facts(older, newer), lines);
    }

    /** Lines of a variant that only one of the two has are not listed: the fact says enough. */
    private static void addLines(List<Line> lines, Variant older, Variant newer) {
        Map<Key, QuoteLine> before = new LinkedHashMap<>();
        older.lines().forEach(line -> before.put(Key.of(line), line));
        for (QuoteLine line : newer.lines()) {
            Optional<QuoteLine> was = Optional.ofNullable(before.remove(Key.of(line)));
            if (was.isEmpty() || isOther(was.get(), line)) {
                lines.add(new Line(newer.kind(), was, Optional.of(line)));
            }
        }
        before.values()
                .forEach(
                        gone ->
                                lines.add(
                                        new Line(
                                                newer.kind(),
                                                Optional.of(gone),
                                                Optional.empty())));
    }

    /** Whether a customer sees another line; what it costs the shop is not for the customer. */
    private static boolean isOther(QuoteLine before, QuoteLine after) {
        return !before.price().equals(after.price())
                || before.quantity().compareTo(after.quantity()) != 0
                || !before.unitPrice().equals(after.unitPrice())
                || !before.title().equals(after.title())
                || !before.detail().equals(after.detail());
    }

    private static List<Fact> facts(Quote older, Quote newer) {
        List<Fact> facts = new ArrayList<>();
        add(facts, "job-title", older.job().title(), newer.job().title());
        add(facts, "customer", older.job().customer(), newer.job().customer());
        add(facts, "job-revision", older.job().revision(), newer.job().revision());
        add(facts, "kits", older.kits(), newer.kits());
        add(facts, "currency", older.currency(), newer.currency());
        add(facts, "valid-until", older.validUntil(), newer.validUntil());
        add(facts, "customer-kind", older.tax().name(), newer.tax().name());
        add(facts, "tax", percent(older.tax().percent()), percent(newer.tax().percent()));
        add(facts, "shipping", shipping(older), shipping(newer));
        for (VariantKind kind : VariantKind.values()) {
            addVariant(facts, kind, older.findVariant(kind), newer.findVariant(kind));
        }
        add(facts, "terms", String.join(" ", older.terms()), String.join(" ", newer.terms()));
        add(
                facts,
                "not-included",
                String.join(" ", older.notIncluded()),
                String.join(" ", newer.notIncluded()));
        return facts;
    }

    private static void addVariant(
            List<Fact> facts, VariantKind kind, Optional<Variant> before, Optional<Variant> after) {
        Text title = kind.title();
        add(facts, title, offered(before), offered(after));
        if (before.isPresent() && after.isPresent()) {
            add(facts, of(title, "net"), before.get().net(), after.get().net());
            add(facts, of(title, "variant-tax"), before.get().tax(), after.get().tax());
            add(facts, of(title, "total"), before.get().total(), after.get().total());
            before.get()
                    .protections()
                    .forEach(
                            was ->
                                    after.get().protections().stream()
                                            .filter(is -> is.circuit().equals(was.circuit()))
                                            .forEach(
                                                    is ->
                                                            add(
                                                                    facts,
                                                                    Phrase.of(
                                                                            "quote.fact.device",
                                                                            title,
                                                                            was.title()),
                                                                    device(was),
                                                                    device(is))));
        }
    }

    private static Text of(Text variant, String what) {
        return Phrase.of("quote.fact." + what, variant);
    }

    private static Text device(Variant.Protection protection) {
        return Recall.of(protection.device(), "quote.device.");
    }

    private static Text offered(Optional<Variant> variant) {
        return variant.isPresent()
                ? Phrase.of("quote.fact.offered")
                : Phrase.of("quote.fact.not-offered");
    }

    private static Text shipping(Quote quote) {
        return quote.shipped() ? Phrase.of("quote.fact.included") : Phrase.of("quote.fact.fetched");
    }

    private static Text percent(BigDecimal percent) {
        return new Exact(percent, Unit.PERCENT);
    }

    private static void add(List<Fact> facts, String what, Object before, Object after) {
        add(facts, Phrase.of("quote.fact." + what), before, after);
    }

    private static void add(List<Fact> facts, Text what, Object before, Object after) {
        if (!Objects.equals(before, after)) {
            facts.add(new Fact(what, said(before), said(after)));
        }
    }

    private static Text said(Object value) {
        return switch (value) {
            case Text text -> text;
            case Money money ->
                    Phrase.of(
                            "quote.fact.amount",
                            money.getCurrencyUnit().getCode(),
                            money.getAmount());
            default -> Text.verbatim(value.toString());
        };
    }
}
