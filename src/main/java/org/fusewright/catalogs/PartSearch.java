package org.fusewright.catalogs;

import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Finds the parts of one catalog whose number, title or brand holds all words of a query. Which
 * parts hold each run of up to three characters is kept, so that hardly any other part than those
 * found is looked at.
 */
final class PartSearch {

    private static final int LONGEST_RUN = 3;

    private final List<Part> parts;
    private final Runs runs;
    private final Map<PartKind, Places> byKind = new EnumMap<>(PartKind.class);

    private PartSearch(List<Part> parts) {
        this.parts = parts;
        this.runs = new Runs(parts.size());
        for (int place = 0; place < parts.size(); place++) {
            Part part = parts.get(place);
            byKind.computeIfAbsent(PartKind.of(part), _ -> new Places(parts.size())).add(place);
            String text = searchText(part);
            for (int length = 1; length <= LONGEST_RUN; length++) {
                for (int from = 0; from + length <= text.length(); from++) {
                    runs.of(text, from, length).add(place);
                }
            }
        }
        runs.trim();
    }

    /**
     * @param parts by number
     */
    static PartSearch of(List<Part> parts) {
        return new PartSearch(parts);
    }

    private static String searchText(Part part) {
        return String.join("\n", part.number().value(), part.title(), part.brand())
                .toLowerCase(Locale.ROOT);
    }

    /** As {@link Catalogs#listParts}. */
    List<Part> list(Set<PartKind> kinds, String query, Optional<PartNumber> after, int limit) {
        List<String> words = List.of(query.toLowerCase(Locale.ROOT).strip().split("\\s+"));
        List<Places> holders = new ArrayList<>();
        for (String word : words) {
            int length = Math.min(word.length(), LONGEST_RUN);
            for (int from = 0; length > 0 && from + length <= word.length(); from++) {
                Optional<Places> places = runs.find(word, from, length);
                if (places.isEmpty()) {
                    return List.of();
                }
                holders.add(places.get());
            }
        }
        if (kinds.size() == 1) {
            Places only = byKind.get(kinds.iterator().next());
            if (only == null) {
                return List.of();
            }
            holders.add(only);
        }
        holders.sort(Comparator.comparingInt(Places::count));
        List<Part> found = new ArrayList<>();
        int place = after.map(this::placeAfter).orElse(0);
        while (found.size() < limit) {
            place = Places.nextOfAll(holders, place, parts.size());
            if (place >= parts.size()) {
                break;
            }
            Part part = parts.get(place++);
            if (kinds.contains(PartKind.of(part)) && holdsAll(part, words)) {
                found.add(part);
            }
        }
        return found;
    }

    private int placeAfter(PartNumber number) {
        int low = 0;
        int high = parts.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (parts.get(middle).number().compareTo(number) <= 0) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** The runs of a word may stand apart. */
    private static boolean holdsAll(Part part, List<String> words) {
        if (words.stream().allMatch(word -> word.length() <= LONGEST_RUN)) {
            return true;
        }
        String text = searchText(part);
        return words.stream().allMatch(text::contains);
    }
}
