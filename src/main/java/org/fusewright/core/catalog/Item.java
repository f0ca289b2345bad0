package org.fusewright.core.catalog;

/**
 * What every part has, whatever its kind.
 *
 * @param massG mass of one piece (of one metre, for wire) in grams; not negative
 */
public record Item(PartNumber number, String title, String brand, double massG) {

    public Item {
        if (title.isBlank()) {
            throw new IllegalArgumentException("a part needs a title: " + number);
        }
        Require.notNegative("massG", massG);
    }
}
