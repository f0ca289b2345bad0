package org.fusewright.core.job;

import org.fusewright.core.quantity.Celsius;

/**
 * Where the loom lives.
 *
 * @param ambient around the leads
 * @param blockAmbient around the devices, under the cap
 * @param bundledLeads current-carrying leads that run together
 */
public record Surroundings(Celsius ambient, Celsius blockAmbient, int bundledLeads) {

    public Surroundings {
        if (bundledLeads < 1) {
            throw new IllegalArgumentException("bundledLeads must be 1 or more");
        }
    }
}
