package org.fusewright.core.job;

import java.util.Optional;

/**
 * A circuit's relay.
 *
 * @param triggerFrom the id of the feed that switches the coil, or {@link #CONTROLLER}
 * @param triggerM from there to terminal 86
 * @param groundM from terminal 85 to ground
 * @param contactFrom another circuit whose device feeds the contact; empty for its own device
 * @param place empty: anywhere
 */
public record RelayUse(
        String triggerFrom,
        double triggerM,
        double groundM,
        Optional<String> contactFrom,
        Optional<BlockPlace> place) {

    /** The trigger source that is no feed: an engine controller, protected by itself. */
    public static final String CONTROLLER = "controller";

    public RelayUse {
        if (!(triggerM >= 0) || !(groundM >= 0)) {
            throw new IllegalArgumentException("relay lead lengths must not be negative");
        }
    }

    public boolean isTriggeredByController() {
        return triggerFrom.equals(CONTROLLER);
    }
}
