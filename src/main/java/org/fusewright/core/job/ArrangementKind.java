package org.fusewright.core.job;

import java.util.Optional;
import java.util.stream.Stream;

/** What the arrangement of a job's blocks is to be best in. */
public enum ArrangementKind {
    /** Least cost of blocks, caps, wedges and plugs, bagged sets taken into account. */
    CHEAPEST("cheapest"),
    FEWEST_BLOCKS("fewest-blocks"),
    /** Most free positions in no more blocks than the cheapest has. */
    MOST_SPARE("most-spare"),
    /** Least current for each position of any block, in no more blocks than the cheapest has. */
    COOLEST("coolest"),
    /** All blocks of one part number. */
    ONE_BLOCK_TYPE("one-block-type");

    private final String code;

    ArrangementKind(String code) {
        this.code = code;
    }

    public String code() {
        return code;
    }

    public static Optional<ArrangementKind> parse(String code) {
        return Stream.of(values()).filter(kind -> kind.code.equals(code)).findFirst();
    }
}
