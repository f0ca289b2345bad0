package org.fusewright.catalogs;

import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * What an import brings, or would bring, against the catalog in force before.
 *
 * @param previousVersion empty for the first import
 * @param counts parts by kind
 * @param added parts that were not there before
 * @param changed parts that were there with other figures
 * @param removed parts that are there no more
 * @param repriced parts that stay and whose offers differ
 */
public record CatalogImport(
        String version,
        Optional<String> previousVersion,
        Map<PartKind, Integer> counts,
        int offers,
        List<PartNumber> added,
        List<PartNumber> changed,
        List<PartNumber> removed,
        List<PartNumber> repriced) {

    static CatalogImport of(CatalogContent content, Optional<Catalog> before) {
        Catalog catalog = content.catalog();
        return new CatalogImport(
                catalog.version(),
                before.map(Catalog::version),
                countByKind(catalog),
                catalog.listOffers().size(),
                numbersIn(catalog, part -> findIn(before, part).isEmpty()),
                numbersIn(
                        catalog,
                        part -> findIn(before, part).filter(old -> !old.equals(part)).isPresent()),
                before.map(b -> numbersIn(b, part -> !holds(catalog, part))).orElse(List.of()),
                before.map(b -> listRepriced(catalog, b)).orElse(List.of()));
    }

    private static Optional<Part> findIn(Optional<Catalog> catalog, Part part) {
        return catalog.flatMap(c -> c.findPart(part.number()));
    }

    private static boolean holds(Catalog catalog, Part part) {
        return catalog.findPart(part.number()).isPresent();
    }

    private static List<PartNumber> listRepriced(Catalog catalog, Catalog before) {
        return numbersIn(
                catalog,
                part ->
                        holds(before, part)
                                && !catalog.listOffers(part.number())
                                        .equals(before.listOffers(part.number())));
    }

    /** How many parts of each kind there are, in the order of the kinds. */
    static Map<PartKind, Integer> countByKind(Catalog catalog) {
        Map<PartKind, Integer> counts = new EnumMap<>(PartKind.class);
        for (PartKind kind : PartKind.values()) {
            counts.put(kind, catalog.listParts(kind.type()).size());
        }
        return counts;
    }

    private static List<PartNumber> numbersIn(Catalog catalog, Predicate<Part> test) {
        return catalog.listParts().stream().filter(test).map(Part::number).toList();
    }
}
