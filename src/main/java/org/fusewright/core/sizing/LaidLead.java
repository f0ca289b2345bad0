package org.fusewright.core.sizing;

import java.util.List;

/** A lead with its wire as it lies. */
record LaidLead(Lead lead, LaidWire laid) {

    static List<Lead> listLeads(List<LaidLead> laidLeads) {
        return laidLeads.stream().map(LaidLead::lead).toList();
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
