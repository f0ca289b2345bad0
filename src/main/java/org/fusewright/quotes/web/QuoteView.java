package org.fusewright.quotes.web;

import org.fusewright.core.kit.PartGroup;
import org.fusewright.core.quote.DeviceDifference;
import org.fusewright.core.quote.LineKind;
import org.fusewright.core.quote.QuoteAction;
import org.fusewright.core.quote.QuoteLine;
import org.fusewright.core.quote.QuoteState;
import org.fusewright.core.quote.Variant;
import org.fusewright.core.quote.VariantKind;
import org.fusewright.core.words.Text;
import org.fusewright.quotes.QuoteShare;
import org.fusewright.quotes.StoredQuote;
import org.fusewright.web.Figures;
import org.fusewright.web.Words;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A quote as its page shows it.
 *
 * @param movedOn what has moved on since it was worked out
 * @param notice what the last attempt to do something came to; may be empty
 * @param shares the links by which this revision is read
 * @param link the address of the link that was made just now; else empty
 */
public record QuoteView(
        StoredQuote kept,
        QuoteForm form,
        List<Text> movedOn,
        String notice,
        List<QuoteShare> shares,
        String link) {

    /** A line of the quote with its places in the variants. */
    public record SharedLine(QuoteLine any, List<Optional<QuoteLine>> inVariants) {}

    private record Key(LineKind kind, String group, String code) {}

    public QuoteView {
        movedOn = List.copyOf(movedOn);
        shares = List.copyOf(shares);
    }

    /** Whether it went out, and so may be shared. */
    public boolean isSent() {
        return kept.state() != QuoteState.DRAFT;
    }

    /** Whether a button for it is shown: earlier revisions are only looked at. */
    public boolean allows(QuoteAction action) {
        return kept.isNewest()
                && kept.state().allows(action)
                && !(action == QuoteAction.FULFIL && kept.fulfilledAt().isPresent());
    }

    public boolean isAccepted(Variant variant) {
        return kept.accepted().filter(variant.kind()::equals).isPresent();
    }

    /** Whether the job could take over devices: as it was asked for it has them. */
    public boolean canTakeOver() {
        return kept.isNewest()
                && kept.accepted().filter(kind -> kind != VariantKind.AS_ASKED).isPresent();
    }

    public List<DeviceDifference> differences() {
        return DeviceDifference.listIn(kept.quote());
    }

    /** All lines of a kind, each once, side by side over the variants. */
    public List<SharedLine> lines(LineKind kind) {
        List<Variant> variants = kept.quote().variants();
        Map<Key, List<Optional<QuoteLine>>> places = new LinkedHashMap<>();
        for (int v = 0; v < variants.size(); v++) {
            for (QuoteLine line : variants.get(v).lines()) {
                if (line.kind() == kind) {
                    places.computeIfAbsent(
                                    new Key(kind, line.group(), line.code()),
                                    _ -> nothing(variants.size()))
                            .set(v, Optional.of(line));
                }
            }
        }
        return places.values().stream()
                .map(
                        lines ->
                                new SharedLine(
                                        lines.stream()
                                                .flatMap(Optional::stream)
                                                .findFirst()
                                                .orElseThrow(),
                                        List.copyOf(lines)))
                .sorted(Comparator.comparing((SharedLine line) -> groupPlace(line.any().group())))
                .toList();
    }

    /** Lines that only a later variant has come where their group stands in a parts list. */
    private static int groupPlace(String group) {
        for (PartGroup known : PartGroup.values()) {
            if (known.code().equals(group)) {
                return known.ordinal();
            }
        }
        return Integer.MAX_VALUE;
    }

    private static List<Optional<QuoteLine>> nothing(int variants) {
        List<Optional<QuoteLine>> places = new ArrayList<>();
        for (int v = 0; v < variants; v++) {
            places.add(Optional.empty());
        }
        return places;
    }

    public static String quantity(QuoteLine line) {
        String quantity = Figures.plain(line.quantity());
        return line.kind() == LineKind.PART && !line.unit().equals("m")
                ? quantity
                : quantity + " " + line.unit();
    }

    public static String unitPrice(QuoteLine line) {
        return Figures.price(line.unitPrice()) + (line.per() == 60 ? " / h" : "");
    }

    /** The share of the price that is not cost, in percent. */
    public static String gain(Variant variant) {
        if (variant.net().isZero()) {
            return "0 %";
        }
        BigDecimal gain =
                variant.net()
                        .minus(variant.cost())
                        .getAmount()
                        .movePointRight(2)
                        .divide(variant.net().getAmount(), 1, RoundingMode.HALF_UP);
        return Figures.plain(gain) + " %";
    }

    public static String kindTitle(LineKind kind) {
        return Words.say("quote-lines." + kind.code());
    }
}
