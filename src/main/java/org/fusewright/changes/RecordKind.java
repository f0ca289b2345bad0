package org.fusewright.changes;

import java.util.Optional;
import java.util.stream.Stream;

/** What a change is a change of. The code is that of the trail's rows. */
public enum RecordKind {
    JOB("job"),
    QUOTE("quote"),
    ORDER("order"),
    COUNT("count"),
    /** A part with its offers, its minimum and its moves of stock. */
    PART("part"),
    SUPPLIER("supplier"),
    LABOUR("labour"),
    MARK_UP("mark-up"),
    SHIPPING("shipping"),
    TAX("tax"),
    /** That a catalog was imported; what it changed is told of the parts, suppliers and so on. */
    CATALOG("catalog"),
    RESTORE("restore"),
    PERSON("person");

    private final String code;

    RecordKind(String code) {
        this.code = code;
    }

    public String code() {
        return code;
    }

    public static Optional<RecordKind> find(String code) {
        return Stream.of(values()).filter(kind -> kind.code.equals(code)).findAny();
    }

    /**
     * @throws IllegalArgumentException when there is none of this code
     */
    public static RecordKind parse(String code) {
        return find(code)
                .orElseThrow(() -> new IllegalArgumentException("no kind of record: " + code));
    }
}
