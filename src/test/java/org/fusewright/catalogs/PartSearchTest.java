package org.fusewright.catalogs;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.core.catalog.Item;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.catalog.Plug;
import org.fusewright.core.catalog.Seal;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;

/** The search finds just what looking at every part finds. */
class PartSearchTest {
    private static final String LETTERS = "aAbBcÄé1-. ";

    private static Part draw(int place, Random random) {
        Item item =
                new Item(
                        new PartNumber("N%04d-%d".formatted(place * 7, random.nextInt(30))),
                        "x" + text(random, 12),
                        text(random, 4),
                        1);
        return random.nextInt(40) == 0 ? new Seal(item, "F", 1, 2) : new Plug(item, "F");
    }

    private static String text(Random random, int longest) {
        StringBuilder text = new StringBuilder();
        for (int i = random.nextInt(longest + 1); i > 0; i--) {
            text.append(LETTERS.charAt(random.nextInt(LETTERS.length())));
        }
        return text.toString();
    }

    private static List<Part> look(
            List<Part> parts,
            Set<PartKind> kinds,
            String query,
            Optional<PartNumber> after,
            int limit) {
        String[] words = query.toLowerCase(Locale.ROOT).strip().split("\\s+");
        return parts.stream()
                .filter(part -> after.isEmpty() || part.number().compareTo(after.get()) > 0)
                .filter(part -> kinds.contains(PartKind.of(part)))
                .filter(
                        part ->
                                Stream.of(words)
                                        .allMatch(
                                                (part.number()
                                                                        + "\n"
                                                                        + part.title()
                                                                        + "\n"
                                                                        + part.brand())
                                                                .toLowerCase(Locale.ROOT)
                                                        ::contains))
                .limit(limit)
                .toList();
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 31, 64, 65, 700})
    void findsWhatLookingAtEachPartFinds(int size) {
        Random random = new Random(size);
        List<Part> parts = new ArrayList<>();
        for (int place = 0; place < size; place++) {
            parts.add(draw(place, random));
        }
        parts.sort(Comparator.comparing(Part::number));
        PartSearch search = PartSearch.of(parts);
        for (int ask = 0; ask < 3_000; ask++) {
            Set<PartKind> kinds =
                    switch (random.nextInt(4)) {
                        case 0 -> EnumSet.of(PartKind.SEAL);
                        case 1 -> EnumSet.of(PartKind.SEAL, PartKind.PLUG);
                        default -> EnumSet.allOf(PartKind.class);
                    };
            String query = text(random, 7);
            Optional<PartNumber> after =
                    random.nextBoolean()
                            ? Optional.empty()
                            : Optional.of(
                                    new PartNumber(
                                            "N%04d".formatted(random.nextInt(7 * size + 9))));
            int limit = 1 + random.nextInt(60);

            assertThat(search.list(kinds, query, after, limit))
                    .as("%s \"%s\" after %s", kinds, query, after)
                    .isEqualTo(look(parts, kinds, query, after, limit));
        }
    }
}
