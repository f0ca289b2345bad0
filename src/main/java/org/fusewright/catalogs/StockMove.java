package org.fusewright.catalogs;

import org.fusewright.core.catalog.PartNumber;

import java.math.BigDecimal;

/**
 * Pieces (metres, for wire) that came onto the shelf, or left it when negative; not 0.
 *
 * @param note what it belongs to, such as a delivery note; may be empty
 */
public record StockMove(PartNumber part, BigDecimal quantity, Reason reason, String note) {

    /** Why stock moves. */
    public enum Reason {
        /** The first stock that a part is given. */
        OPENING("opening"),
        /** Counted, and found to be something else. */
        STOCKTAKE("stocktake"),
        /** The part left the catalog. */
        REMOVED("removed"),
        /** Came from a supplier. */
        DELIVERY("delivery"),
        /** Went into kits. */
        USED("used");

        private final String code;

        Reason(String code) {
            this.code = code;
        }

        public String code() {
            return code;
        }
    }

    public StockMove {
        if (quantity.signum() == 0) {
            throw new IllegalArgumentException("nothing moves: " + part);
        }
    }
}
