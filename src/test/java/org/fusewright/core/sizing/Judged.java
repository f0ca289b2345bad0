package org.fusewright.core.sizing;

import org.fusewright.core.TestStock;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Subject.Scope;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.job.ResolvedJob;
import org.fusewright.core.pricing.Stock;

import java.util.Set;

/**
 * What settled sizes cost, by the checks and the parts that come out; shares nothing with choosing.
 */
record Judged(Stock stock, ResolvedJob job) {

    /** What the choice of devices and leads of circuits must keep. */
    private static final Set<CheckCode> KEPT =
            Set.of(
                    CheckCode.RUNNING_LOAD,
                    CheckCode.INRUSH,
                    CheckCode.OVERLOAD_PROTECTION,
                    CheckCode.SHORT_CIRCUIT_WITHSTAND,
                    CheckCode.INTERRUPTING_CAPACITY,
                    CheckCode.FAULT_CLEARING,
                    CheckCode.VOLTAGE_DROP,
                    CheckCode.TERMINAL_CURRENT);

    /** Cost of all circuits; more than any where a check does not pass. */
    long costIfKept(KeptSizes kept) {
        SizedJob judged = Sizer.judge(job, kept);
        return keepsAll(judged) ? costMicros(judged) : Long.MAX_VALUE;
    }

    static boolean keepsAll(SizedJob sized) {
        for (Check check : sized.checks()) {
            boolean ofChoice =
                    KEPT.contains(check.code())
                            || check.subject().text().english().endsWith(", splice parts");
            if (check.subject().scope() == Scope.CIRCUIT
                    && ofChoice
                    && check.verdict() != Verdict.PASS) {
                return false;
            }
        }
        return true;
    }

    /** Devices, leads, their cavity ends and splices of all circuits. */
    long costMicros(SizedJob sized) {
        long micros = 0;
        for (SizedCircuit circuit : sized.circuits()) {
            if (circuit.device().isPresent()) {
                micros += priceMicros(circuit.device().get().number());
            }
            for (Lead lead : circuit.leads()) {
                micros += costMicros(lead, lead.wire());
            }
            for (SizedSplice splice : circuit.splices()) {
                micros += priceMicros(splice.part().number());
            }
        }
        return micros;
    }

    /** Whether a lead of this wire could end where it ends. */
    boolean fits(Lead lead, Wire wire) {
        return cavityEnds(lead) == 0
                || stock.findTerminal(TestStock.FAMILY, wire).isPresent()
                        && stock.findSeal(TestStock.FAMILY, wire).isPresent();
    }

    private static int cavityEnds(Lead lead) {
        return (lead.from() instanceof LeadEnd.InCavity ? 1 : 0)
                + (lead.to() instanceof LeadEnd.InCavity ? 1 : 0);
    }

    /** Of a lead, were it of this wire: cut length and cavity ends. */
    long costMicros(Lead lead, Wire wire) {
        long micros = Math.round(lead.cut().value() * priceMicros(wire.number()) / 1000.0);
        int cavities = cavityEnds(lead);
        return cavities == 0 ? micros : micros + cavities * endMicros(wire);
    }

    private long endMicros(Wire wire) {
        return priceMicros(stock.findTerminal(TestStock.FAMILY, wire).orElseThrow().number())
                + priceMicros(stock.findSeal(TestStock.FAMILY, wire).orElseThrow().number());
    }

    long priceMicros(PartNumber number) {
        return stock.prices().unitPriceMicros(number);
    }
}
