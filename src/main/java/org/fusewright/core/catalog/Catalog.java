package org.fusewright.core.catalog;

import org.joda.money.CurrencyUnit;

import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * All parts and offers that a kit may be made of; unchanging. Parts stand in the order of their
 * numbers, offers in the order of part, supplier, currency and pack size.
 */
public final class Catalog {

    private static final Comparator<Offer> OFFER_ORDER =
            Comparator.comparing(Offer::part)
                    .thenComparing(Offer::supplier)
                    .thenComparing(offer -> offer.currency().getCode())
                    .thenComparing(Offer::packSize);

    private final String version;
    private final Map<PartNumber, Part> byNumber;
    private final Map<Class<? extends Part>, List<Part>> byKind;
    private final List<Part> parts;
    private final List<Offer> offers;
    private final Map<PartNumber, List<Offer>> offersByPart = new HashMap<>();
    private final List<CurrencyUnit> currencies;

    private Catalog(String version, Collection<? extends Part> parts, List<Offer> offers) {
        this.version = version;
        SortedMap<PartNumber, Part> sorted = new TreeMap<>();
        for (Part part : parts) {
            if (sorted.put(part.number(), part) != null) {
                throw new IllegalArgumentException("part number given twice: " + part.number());
            }
        }
        // Found by hash: each kit looks up dozens of parts.
        this.byNumber = new HashMap<>(sorted);
        this.parts = List.copyOf(sorted.values());
        this.byKind =
                this.parts.stream()
                        .collect(
                                Collectors.groupingBy(
                                        Part::getClass, Collectors.toUnmodifiableList()));
        this.offers = offers.stream().sorted(OFFER_ORDER).toList();
        for (int from = 0, to = 0; from < this.offers.size(); from = to) {
            PartNumber part = this.offers.get(from).part();
            if (!byNumber.containsKey(part)) {
                throw new IllegalArgumentException("offer for an unknown part: " + part);
            }
            while (to < this.offers.size() && this.offers.get(to).part().equals(part)) {
                to++;
            }
            offersByPart.put(part, this.offers.subList(from, to));
        }
        this.currencies =
                this.offers.stream()
                        .map(Offer::currency)
                        .distinct()
                        .sorted(Comparator.comparing(CurrencyUnit::getCode))
                        .toList();
    }

    /**
     * @param version names the content: equal versions mean equal catalogs
     * @throws IllegalArgumentException when a number stands twice or an offer's part is unknown
     */
    public static Catalog of(String version, Collection<? extends Part> parts, List<Offer> offers) {
        return new Catalog(version, parts, offers);
    }

    public String version() {
        return version;
    }

    /** All parts, by number. */
    public List<Part> listParts() {
        return parts;
    }

    public List<Offer> listOffers() {
        return offers;
    }

    /** The offers for one part; none for a part that there is not. */
    public List<Offer> listOffers(PartNumber part) {
        return offersByPart.getOrDefault(part, List.of());
    }

    /** The currencies of the offers, by code. */
    public List<CurrencyUnit> listCurrencies() {
        return currencies;
    }

    /** All parts of one kind, by number. */
    public <T extends Part> List<T> listParts(Class<T> kind) {
        @SuppressWarnings("unchecked")
        List<T> parts = (List<T>) byKind.getOrDefault(kind, List.of());
        return parts;
    }

    public Optional<Part> findPart(PartNumber number) {
        return Optional.ofNullable(byNumber.get(number));
    }

    /**
     * @throws IllegalArgumentException when there is no such part
     */
    public Part getPart(PartNumber number) {
        return findPart(number)
                .orElseThrow(() -> new IllegalArgumentException("no such part: " + number));
    }
}
