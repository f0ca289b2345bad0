package org.fusewright.quotes;

import org.fusewright.core.catalog.PartNumber;
import org.fusewright.quotes.store.QuoteDemand;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

import java.math.BigDecimal;
import java.util.SortedMap;

/** The quotes that are kept. */
@Service
public class Quotes {
    private final QuoteDemand demand;

    Quotes(QuoteDemand demand) {
        this.demand = demand;
    }

    /**
     * What all accepted quotes together need of each part until their kits are delivered: metres of
     * wire, pieces of everything else.
     */
    @Transactional(readOnly = true)
    public SortedMap<PartNumber, BigDecimal> sumAcceptedDemand() {
        return demand.sum();
    }
}
