package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Relay;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Subject;
import org.fusewright.core.job.Job;
import org.fusewright.core.quantity.Celsius;
import org.fusewright.core.quantity.Ohms;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Every rule that applies to one circuit as it was sized. */
final class CircuitChecks {

    private final Loom loom;
    private final Job job;
    private final CircuitPlan plan;
    private final Subject subject;

    CircuitChecks(Loom loom, CircuitPlan plan) {
        this.loom = loom;
        this.job = loom.job();
        this.plan = plan;
        this.subject = Subject.circuit(plan.id());
    }

    /**
     * @param deviceDemand what hangs on its device; empty when that is another circuit's
     * @param pigtail that leads to its device, when it has one
     * @param coilSource what reaches the start of its relay's trigger lead; not looked at without a
     *     relay
     */
    List<Check> list(
            Optional<DeviceDemand> deviceDemand,
            Optional<ProtectedLead> pigtail,
            VoltageLeft.Span coilSource) {
        List<Check> checks = new ArrayList<>();
        Device device = plan.device();
        Celsius block = job.surroundings().blockAmbient();
        TimeCurrentBand band = loom.bandInBlock(device);
        if (deviceDemand.isPresent()) {
            DeviceDemand demand = deviceDemand.get();
            checks.add(
                    DeviceRules.load(
                            CheckCode.RUNNING_LOAD,
                            subject,
                            device,
                            demand.carriedA(),
                            demand.share(),
                            block));
            DeviceRules.inrush(subject, device, band, demand.startUp()).ifPresent(checks::add);
            checks.add(DeviceRules.interrupting(subject, device, plan.highestA()));
        }
        List<ProtectedLead> leads = ProtectedLead.listBehindDevice(plan.leads());
        double lowestA = FaultCurrent.lowestA(job.supply(), new Ohms(plan.farOhm()));
        checks.add(OverloadProtection.check(subject, device, leads));
        List<ProtectedLead> overloaded = new ArrayList<>(leads);
        pigtail.ifPresent(overloaded::add);
        checks.add(
                OverloadProtection.checkUntilOpen(
                        subject, loom, device, band, overloaded, plan.highestA()));
        List<ProtectedLead> shorted = new ArrayList<>(leads);
        plan.passed().map(ProtectedLead::of).ifPresent(shorted::add);
        checks.add(
                ShortCircuitWithstand.check(
                        subject,
                        shorted,
                        band,
                        new ShortCircuitWithstand.Span(lowestA, plan.highestA())));
        checks.add(DeviceRules.faultClearing(subject, band, lowestA));
        double mayLosePercent = plan.demand().resolved().circuit().maxDropPercent();
        for (SizedLoad load : plan.loads()) {
            checks.add(VoltageDrop.check(subject, load, mayLosePercent));
        }
        TerminalCurrent.check(subject, plan.leads()).ifPresent(checks::add);
        plan.demand()
                .resolved()
                .relay()
                .ifPresent(relay -> checks.addAll(relayChecks(relay, coilSource)));
        AutomaticRestart.check(subject, device, plan.demand()).ifPresent(checks::add);
        checks.addAll(
                SplicePlacement.list(subject, plan.splices(), plan.splicesFit(), plan.leads()));
        return checks;
    }

    private static boolean isCoilLead(LaidLead lead) {
        return lead.lead().role() == LeadRole.TRIGGER || lead.lead().role() == LeadRole.GROUND;
    }

    private List<Check> relayChecks(Relay relay, VoltageLeft.Span coilSource) {
        double lostV = 0;
        for (LaidLead lead : plan.leads()) {
            if (isCoilLead(lead)) {
                lostV += lead.lead().dropV();
                lostV += lead.laid().terminalOhm() * lead.lead().currentA();
            }
        }
        VoltageLeft.Span atCoil = coilSource.minus(lostV);
        List<Check> checks = new ArrayList<>(4);
        checks.add(RelayRules.contact(subject, relay, plan.demand(), job));
        checks.add(RelayRules.pullIn(subject, relay, job, atCoil));
        RelayRules.hold(subject, relay, job, atCoil).ifPresent(checks::add);
        checks.add(RelayRules.suppression(subject, relay, plan.demand()));
        return checks;
    }
}
