package org.fusewright.changes;

import java.util.List;
import java.util.OptionalLong;

/**
 * Some changes, newest first.
 *
 * @param next after which to ask for the rest; empty when there is none
 */
public record ChangePage<T>(List<T> changes, OptionalLong next) {
    public ChangePage {
        changes = List.copyOf(changes);
    }
}
