package org.fusewright.jobs.web;

import org.fusewright.jobs.PriceSight;
import org.fusewright.web.Visitor;
import org.springframework.stereotype.Component;

/** Whoever asks for a page or a document sees prices or not. */
@Component
class VisitorsSight implements PriceSight {
    @Override
    public boolean isOpen() {
        return Visitor.current().seesPrices();
    }
}
