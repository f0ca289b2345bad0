package org.fusewright.orders;

import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.order.Cover;
import org.fusewright.core.order.PartDemand;
import org.fusewright.core.words.Text;

import java.util.List;
import java.util.Map;

/**
 * What is needed now, and the cheapest way to buy it.
 *
 * @param demands of all parts that something is needed of, there or not
 * @param notes what the reader should know beside it
 * @param titles of the parts in it
 * @param suppliers their names by code, where the catalog names them
 * @param version names the content: drafts are made of the proposal that was looked at
 */
public record Proposal(
        ProposalWishes wishes,
        List<PartDemand> demands,
        Cover cover,
        List<Text> notes,
        Map<PartNumber, String> titles,
        Map<String, String> suppliers,
        String version) {
    public Proposal {
        demands = List.copyOf(demands);
        notes = List.copyOf(notes);
        titles = Map.copyOf(titles);
        suppliers = Map.copyOf(suppliers);
    }

    public String titleOf(PartNumber part) {
        return titles.getOrDefault(part, "");
    }

    /** Name and code of a supplier, or its code alone. */
    public String supplierOf(String code) {
        String name = suppliers.get(code);
        return name == null || name.equals(code) ? code : name + " (" + code + ")";
    }
}
