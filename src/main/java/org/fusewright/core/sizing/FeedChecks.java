package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Subject;
import org.fusewright.core.job.Job;
import org.fusewright.core.quantity.Celsius;
import org.fusewright.core.quantity.Ohms;
import org.fusewright.core.sizing.FeedPlan.Outlet;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Every rule that applies to one feed as it was sized. */
final class FeedChecks {

    private FeedChecks() {}

    /**
     * @param branches the devices behind the main device
     */
    static List<Check> list(Loom loom, FeedPlan plan, List<Selectivity.Branch> branches) {
        Job job = loom.job();
        List<Check> checks = new ArrayList<>();
        FeedDemand demand = plan.demand();
        Subject subject = Subject.feed(demand.feed().id());
        Device main = plan.main();
        Celsius ambient = job.surroundings().ambient();
        TimeCurrentBand band = loom.bandOfMain(main);
        checks.add(
                demand.diversity()
                        .told(
                                DeviceRules.load(
                                        CheckCode.FEED_LOAD,
                                        subject,
                                        main,
                                        demand.runningA(),
                                        DeviceLimits.CONTINUOUS_SHARE,
                                        ambient)));
        DeviceRules.inrush(subject, main, band, demand.startUp()).ifPresent(checks::add);
        checks.add(DeviceRules.interrupting(subject, main, plan.highestA()));
        List<ProtectedLead> leads = protectedLeads(plan);
        double lowestA = FaultCurrent.lowestA(job.supply(), new Ohms(farOhm(plan)));
        checks.add(OverloadProtection.check(subject, main, leads));
        List<ProtectedLead> overloaded = overloadedLeads(plan);
        if (!overloaded.isEmpty()) {
            checks.add(
                    OverloadProtection.checkUntilOpen(
                            subject, loom, main, band, overloaded, plan.highestA()));
        }
        checks.add(
                ShortCircuitWithstand.check(
                        subject,
                        leads,
                        band,
                        new ShortCircuitWithstand.Span(lowestA, plan.highestA())));
        checks.add(DeviceRules.faultClearing(subject, band, lowestA));
        TerminalCurrent.check(subject, plan.leads()).ifPresent(checks::add);
        if (!branches.isEmpty()) {
            checks.add(MainDeviceRules.selectivity(subject, main, band, branches));
        }
        checks.add(
                MainDeviceRules.sourceProtection(subject, demand.feed().feed().sourceDistanceM()));
        if (demand.feed().feed().gauge().isPresent()) {
            checks.add(MainDeviceRules.holderFit(subject, plan.holder(), plan.wire()));
        }
        checks.addAll(
                SplicePlacement.list(subject, plan.splices(), plan.splicesFit(), plan.leads()));
        return checks;
    }

    private static boolean isPigtail(Lead lead) {
        return lead.role() == LeadRole.PIGTAIL && lead.to() instanceof LeadEnd.InCavity;
    }

    /** The pigtails of a feed by the circuit that each leads to. */
    static Map<String, ProtectedLead> pigtails(FeedPlan plan) {
        Map<String, ProtectedLead> pigtails = new HashMap<>();
        for (LaidLead lead : plan.leads()) {
            if (isPigtail(lead.lead()) && lead.lead().to() instanceof LeadEnd.InCavity cavity) {
                pigtails.put(cavity.circuit(), ProtectedLead.of(lead));
            }
        }
        return pigtails;
    }

    /**
     * What an overload may flow through until the main device opens. A pigtail carries what its
     * branch's own device lets pass, which may sit anywhere along a lead from which nothing
     * branches off; a relay's coil cannot ask for more than it does (IEC 60364-4-43 433.2.2 and
     * 433.3.1, from memory).
     */
    private static List<ProtectedLead> overloadedLeads(FeedPlan plan) {
        List<ProtectedLead> leads = new ArrayList<>();
        for (int i = 1; i < plan.leads().size(); i++) {
            LaidLead lead = plan.leads().get(i);
            if (!isPigtail(lead.lead())) {
                leads.add(ProtectedLead.of(lead));
            }
        }
        return leads;
    }

    /** Its own leads but the one before the main device, and relay triggers that hang on it. */
    private static List<ProtectedLead> protectedLeads(FeedPlan plan) {
        List<ProtectedLead> leads = new ArrayList<>();
        for (int i = 1; i < plan.leads().size(); i++) {
            leads.add(ProtectedLead.of(plan.leads().get(i)));
        }
        for (Outlet outlet : plan.outlets()) {
            if (outlet.service().isTrigger()) {
                leads.add(
                        new ProtectedLead(
                                outlet.service().circuit().id() + "/trigger",
                                outlet.wire(),
                                outlet.service().currentA()));
            }
        }
        return leads;
    }

    private static double farOhm(FeedPlan plan) {
        double most = 0;
        for (Outlet outlet : plan.outlets()) {
            double ohm = outlet.limb().mostOhm();
            if (outlet.service().isTrigger()) {
                ohm += outlet.wire().warmOhm(outlet.routeM(), outlet.service().currentA());
            }
            most = Math.max(most, ohm);
        }
        return most;
    }
}
