package org.fusewright.core.words;

import java.math.BigDecimal;

/** A figure with all its decimals, idle zeros too, such as a scale shows it. */
public record Exact(BigDecimal value, Unit unit) implements Text {

    /** The figure alone, where its unit stands behind another one. */
    public Text bare() {
        return new Bare(this);
    }
}
