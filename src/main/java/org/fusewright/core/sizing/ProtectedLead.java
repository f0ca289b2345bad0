package org.fusewright.core.sizing;

import java.util.ArrayList;
import java.util.List;

/** A lead behind a device, as the checks of that device look at it. */
record ProtectedLead(String id, LaidWire laid, double currentA) {

    static ProtectedLead of(LaidLead lead) {
        return new ProtectedLead(lead.lead().id(), lead.laid(), lead.lead().currentA());
    }

    /** All but the leads of relay coils, which the trigger's own source protects. */
    static List<ProtectedLead> listBehindDevice(List<LaidLead> leads) {
        List<ProtectedLead> behind = new ArrayList<>(leads.size());
        for (LaidLead lead : leads) {
            LeadRole role = lead.lead().role();
            if (role != LeadRole.TRIGGER && role != LeadRole.GROUND) {
                behind.add(of(lead));
            }
        }
        return behind;
    }

    String named() {
        return id + ", " + laid.wire().size();
    }

    /** The one that carries least. */
    static ProtectedLead weakest(List<ProtectedLead> leads) {
        ProtectedLead weakest = leads.getFirst();
        for (ProtectedLead lead : leads) {
            if (lead.laid().allowedA() < weakest.laid().allowedA()) {
                weakest = lead;
            }
        }
        return weakest;
    }
}
