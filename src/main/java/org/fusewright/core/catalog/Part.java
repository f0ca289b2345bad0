package org.fusewright.core.catalog;

/** A part of any kind. Adding a kind starts here: the compiler then names every place to extend. */
public sealed interface Part
        permits Block,
                Cap,
                Wedge,
                Terminal,
                Seal,
                Plug,
                Device,
                Relay,
                Wire,
                Splice,
                Holder,
                BaggedSet {

    Item item();

    default PartNumber number() {
        return item().number();
    }

    default String title() {
        return item().title();
    }

    default String brand() {
        return item().brand();
    }

    default double massG() {
        return item().massG();
    }
}
