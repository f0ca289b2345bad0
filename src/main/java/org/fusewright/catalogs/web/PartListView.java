package org.fusewright.catalogs.web;

import org.fusewright.catalogs.PartKind;

import java.util.List;
import java.util.Map;

/**
 * One page of the list of parts.
 *
 * @param kind the code of the only kind shown; empty for all
 * @param currencies the headings of the price columns
 * @param next the number after which the next page starts; empty on the last one
 */
public record PartListView(
        String version,
        Map<PartKind, Integer> counts,
        String kind,
        String query,
        List<String> currencies,
        List<Row> rows,
        String next) {

    /**
     * One part; a price is that of a piece when one pack is bought, empty when nobody offers it.
     */
    public record Row(
            String number, String kind, String title, String brand, List<String> prices) {}
}
