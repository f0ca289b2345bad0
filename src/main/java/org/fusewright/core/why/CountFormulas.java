package org.fusewright.core.why;

import static org.fusewright.core.formula.Expression.fixed;
import static org.fusewright.core.formula.Expression.of;

import org.fusewright.core.formula.Derivation;
import org.fusewright.core.formula.Expression;
import org.fusewright.core.formula.Quantity;
import org.fusewright.core.job.Load;
import org.fusewright.core.kit.Cavity;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitBlock;
import org.fusewright.core.kit.KitCircuit;
import org.fusewright.core.kit.KitFeed;
import org.fusewright.core.kit.KitLead;
import org.fusewright.core.sizing.SizedCircuit;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.fusewright.core.words.Unit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** What checks count, as formulas. */
final class CountFormulas {

    private CountFormulas() {}

    private static Derivation number(Phrase meaning, Expression expression) {
        return new Derivation("N", meaning, Unit.NONE, expression);
    }

    /**
     * Loads that move and may start again by themselves.
     *
     * @param restarts whether the device closes again by itself
     */
    static Derivation restarting(SizedCircuit circuit, String device, boolean restarts) {
        List<Expression> terms = new ArrayList<>();
        for (Load load : circuit.resolved().circuit().loads()) {
            if (load.kind().moves()) {
                terms.add(
                        count(
                                terms.size() + 1,
                                load.count(),
                                Phrase.of("formula.so-many", load.title())));
            }
        }
        return number(
                Phrase.of("formula.restarting"),
                of(Quantity.rule(
                                "a",
                                restarts ? 1 : 0,
                                Unit.NONE,
                                Phrase.of("formula.restarts", device)))
                        .times(Expression.sum(terms)));
    }

    private static Expression count(int index, int many, Text meaning) {
        return of(Quantity.count("n_" + index, many, meaning));
    }

    /** Devices that lamps hang on: each counts once, however many lamps it has. */
    static Derivation devicesOfLamps(List<SizedCircuit> circuits) {
        Map<String, Integer> lamps = new LinkedHashMap<>();
        for (SizedCircuit circuit : circuits) {
            String owner = circuit.resolved().circuit().contactFrom().orElse(circuit.id());
            for (Load load : circuit.resolved().circuit().loads()) {
                if (load.kind().isLamp()) {
                    lamps.merge(owner, load.count(), Integer::sum);
                }
            }
        }
        List<Expression> terms = new ArrayList<>();
        lamps.forEach(
                (owner, many) ->
                        terms.add(
                                Expression.smallest(
                                        fixed(1),
                                        count(
                                                terms.size() + 1,
                                                many,
                                                Phrase.of("formula.lamps-on", owner)))));
        return number(Phrase.of("formula.devices-of-lamps"), Expression.sum(terms));
    }

    static Derivation unplugged(KitBlock block) {
        int plugs = cavities(block, cavity -> cavity.plug().isPresent());
        return number(
                Phrase.of("formula.unplugged", block.id()),
                Expression.largest(
                        fixed(0),
                        empty(block)
                                .minus(
                                        of(
                                                Quantity.count(
                                                        "n_p",
                                                        plugs,
                                                        Phrase.of("part-group.plug"))))));
    }

    static Derivation occupied(KitBlock block) {
        return number(
                Phrase.of("formula.occupied", block.id()),
                of(Quantity.count("n_c", block.cavities().size(), Phrase.of("formula.cavities")))
                        .minus(empty(block)));
    }

    private static Expression empty(KitBlock block) {
        int empty = cavities(block, cavity -> cavity.occupant().isEmpty());
        return of(Quantity.count("n_e", empty, Phrase.of("formula.empty-cavities")));
    }

    private static int cavities(KitBlock block, Predicate<Cavity> which) {
        return (int) block.cavities().stream().filter(which).count();
    }

    /** By the circuits and feeds whose leads they are. */
    static Derivation leadEnds(Kit kit, KitBlock block) {
        Set<String> cavities =
                block.cavities().stream().map(Cavity::id).collect(Collectors.toSet());
        Map<String, List<KitLead>> leads = new LinkedHashMap<>();
        for (KitFeed feed : kit.feeds()) {
            leads.computeIfAbsent(feed.sized().id(), id -> new ArrayList<>()).addAll(feed.leads());
        }
        for (KitCircuit circuit : kit.circuits()) {
            leads.computeIfAbsent(circuit.sized().id(), id -> new ArrayList<>())
                    .addAll(circuit.leads());
        }
        List<Expression> terms = new ArrayList<>();
        leads.forEach(
                (owner, own) -> {
                    int ends = 0;
                    for (KitLead lead : own) {
                        ends += cavities.contains(lead.from()) ? 1 : 0;
                        ends += cavities.contains(lead.to()) ? 1 : 0;
                    }
                    if (ends > 0) {
                        terms.add(
                                count(
                                        terms.size() + 1,
                                        ends,
                                        Phrase.of("formula.lead-ends-of", owner)));
                    }
                });
        return number(Phrase.of("formula.lead-ends", block.id()), Expression.sum(terms));
    }
}
