package org.fusewright.accounts;

import java.util.Optional;
import java.util.stream.Stream;

/** What a person may do; which address is open to which role is one table, {@code AccessTable}. */
public enum Role {
    /** Everything: prices, quotes, orders, the catalog, backups, people. */
    OWNER("owner"),
    /** Jobs, kits and counts, without any price. */
    BUILDER("builder");

    private final String code;

    Role(String code) {
        this.code = code;
    }

    public String code() {
        return code;
    }

    public static Optional<Role> find(String code) {
        return Stream.of(values()).filter(role -> role.code.equals(code)).findFirst();
    }
}
