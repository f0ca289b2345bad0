package org.fusewright.core.fitting;

/**
 * Where an item sits.
 *
 * @param item id of the item
 * @param firstPosition counted from 1; a {@link Width#RELAY_PAIR} takes the next one too
 */
public record PlacedItem(String item, int firstPosition) {}
