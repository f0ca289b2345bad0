package org.fusewright.accounts.web;

import org.fusewright.web.Visitor;

import java.util.Set;

/** To whom an address is open. */
enum Who {
    /** To anybody; what a link's secret opens is behind such an address. */
    ANYBODY(Visitor.Rights.values()),
    /** To people who build. */
    BUILDERS(Visitor.Rights.OWNER, Visitor.Rights.BUILDER),
    /** To owners alone. */
    OWNERS(Visitor.Rights.OWNER);

    private final Set<Visitor.Rights> rights;

    Who(Visitor.Rights... rights) {
        this.rights = Set.of(rights);
    }

    boolean admits(Visitor visitor) {
        return rights.contains(visitor.may());
    }
}
