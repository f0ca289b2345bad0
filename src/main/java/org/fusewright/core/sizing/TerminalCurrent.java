package org.fusewright.core.sizing;

import org.fusewright.core.check.Basis;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.Check.Measured;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Subject;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Phrase;

import java.util.List;
import java.util.Optional;

/**
 * Whether the terminal on each lead that ends in a cavity carries the lead's running current; a
 * terminal may govern instead of the wire (AC 43.13-1B chapter 11).
 */
final class TerminalCurrent {

    private static final Basis BASIS = Basis.of("basis.terminal-current");

    private TerminalCurrent() {}

    /** The lead that comes nearest to its terminal's limit; empty when none ends in a cavity. */
    static Optional<Check> check(Subject subject, List<LaidLead> leads) {
        Optional<LaidLead> nearest = Optional.empty();
        for (LaidLead lead : leads) {
            if (lead.endsInCavity() && (nearest.isEmpty() || use(lead) > use(nearest.get()))) {
                nearest = Optional.of(lead);
            }
        }
        return nearest.map(lead -> check(subject, lead));
    }

    private static double use(LaidLead lead) {
        double terminalA = lead.laid().terminalA();
        return terminalA == 0 ? Double.POSITIVE_INFINITY : lead.lead().currentA() / terminalA;
    }

    private static Check check(Subject subject, LaidLead lead) {
        double terminalA = lead.laid().terminalA();
        Phrase says =
                terminalA == 0
                        ? Phrase.of("terminal-current.none", ProtectedLead.of(lead).named())
                        : Phrase.of(
                                "terminal-current.carries",
                                lead.lead().id(),
                                Amount.amps(terminalA),
                                Amount.amps(lead.lead().currentA()));
        return Check.atMost(
                CheckCode.TERMINAL_CURRENT,
                subject,
                new Measured(lead.lead().currentA(), terminalA, "A"),
                Verdict.FAIL,
                says,
                BASIS);
    }
}
