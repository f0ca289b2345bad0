package org.fusewright.jobs.web;

import org.fusewright.core.check.Check;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.job.BlockPlace;
import org.fusewright.core.job.Circuit;
import org.fusewright.core.job.RelayUse;
import org.fusewright.core.kit.Kit;
import org.fusewright.web.Words;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A place that the job asks for a device or relay.
 *
 * @param row what has the place in the form: a circuit's row, or its relay
 * @param block where it is told of: the block asked for, or the first one when there is no such
 * @param says what the check says of it
 */
public record KeptPlace(
        String row, String circuit, boolean relay, String block, boolean kept, String says) {

    static List<KeptPlace> listOf(Kit kit) {
        List<KeptPlace> places = new ArrayList<>();
        List<Circuit> circuits = kit.job().circuits();
        for (int i = 0; i < circuits.size(); i++) {
            Circuit circuit = circuits.get(i);
            String row = "/circuits/" + i;
            find(kit, row, circuit, circuit.place(), false).ifPresent(places::add);
            find(kit, row + "/relay", circuit, circuit.relay().flatMap(RelayUse::place), true)
                    .ifPresent(places::add);
        }
        return places;
    }

    private static Optional<KeptPlace> find(
            Kit kit, String row, Circuit circuit, Optional<BlockPlace> place, boolean relay) {
        if (place.isEmpty() || !place.get().fixed() || kit.blocks().isEmpty()) {
            return Optional.empty();
        }
        String asked = place.get().block();
        boolean there = kit.blocks().stream().anyMatch(block -> block.id().equals(asked));
        String block = there ? asked : kit.blocks().getFirst().id();
        return kit.checks().stream()
                .filter(check -> isOf(check, circuit, relay))
                .findFirst()
                .map(
                        check ->
                                new KeptPlace(
                                        row,
                                        circuit.id(),
                                        relay,
                                        block,
                                        check.verdict() != Verdict.FAIL,
                                        Words.say(check.says())));
    }

    private static boolean isOf(Check check, Circuit circuit, boolean relay) {
        return check.code() == CheckCode.PLACE_KEPT
                && check.subject().id().equals(circuit.id())
                && check.subject().text().english().endsWith("/relay") == relay;
    }

    /** What the place is of, such as "relay of pump". */
    public String what() {
        return Words.say(relay ? "sheet.relay-of" : "sheet.device-of-circuit", circuit);
    }
}
