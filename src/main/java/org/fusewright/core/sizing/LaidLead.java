package org.fusewright.core.sizing;

import java.util.ArrayList;
import java.util.List;

/** A lead with its wire as it lies. */
record LaidLead(Lead lead, LaidWire laid) {

    static List<Lead> listLeads(List<LaidLead> laidLeads) {
        List<Lead> leads = new ArrayList<>(laidLeads.size());
        for (LaidLead laid : laidLeads) {
            leads.add(laid.lead());
        }
        return leads;
    }

    boolean endsInCavity() {
        return lead.from() instanceof LeadEnd.InCavity || lead.to() instanceof LeadEnd.InCavity;
    }

    boolean endsAtSplice() {
        return lead.from() instanceof LeadEnd.AtSplice || lead.to() instanceof LeadEnd.AtSplice;
    }

    boolean endsAtBothInSplices() {
        return lead.from() instanceof LeadEnd.AtSplice && lead.to() instanceof LeadEnd.AtSplice;
    }
}
