package org.fusewright.core.sizing;

import org.fusewright.core.check.Basis;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.Check.Measured;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Subject;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.words.Phrase;

import java.util.Collection;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;

/** Not every lamp on one device, so that one fault never leaves the machine dark (TMC RP 111C). */
final class LightingSeparation {

    private static final Basis BASIS = Basis.published("TMC RP 111C");

    private LightingSeparation() {}

    /** Empty with fewer than two lamps. */
    static Optional<Check> check(Collection<CircuitDemand> demands) {
        int lamps = 0;
        Set<String> devices = new HashSet<>();
        for (CircuitDemand demand : demands) {
            for (SingleLoad load : demand.loads()) {
                if (load.load().kind().isLamp()) {
                    lamps++;
                    devices.add(demand.resolved().circuit().contactFrom().orElse(demand.id()));
                }
            }
        }
        if (lamps < 2) {
            return Optional.empty();
        }
        return Optional.of(
                Check.atLeast(
                        CheckCode.LIGHTING_SEPARATION,
                        Subject.job(),
                        new Measured(devices.size(), 2, ""),
                        Verdict.CAUTION,
                        devices.size() > 1
                                ? Phrase.of("lighting-separation.apart", lamps, devices.size())
                                : Phrase.of("lighting-separation.together", lamps),
                        BASIS));
    }
}
