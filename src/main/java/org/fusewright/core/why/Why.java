package org.fusewright.core.why;

import org.fusewright.core.formula.Derivation;
import org.fusewright.core.job.Job;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitCircuit;
import org.fusewright.core.kit.KitFeed;
import org.fusewright.core.kit.KitLead;
import org.fusewright.core.sizing.CurrentFormulas;
import org.fusewright.core.sizing.DeadShort;
import org.fusewright.core.sizing.LeadFormulas;
import org.fusewright.core.sizing.ProtectionStudy;
import org.fusewright.core.sizing.SizedCircuit;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Explains the figures of a kit. A figure has a name of its kind and of what it belongs to:
 *
 * <ul>
 *   <li>"running:pump", "start:pump": a circuit's currents
 *   <li>"feed:main": what a feed carries
 *   <li>"cut:pump/out", "current:pump/out", "drop:pump/out": what to cut for a lead, what it
 *       carries and loses
 *   <li>"short:pump:at-device", "short:pump:far-end": what a dead short draws
 *   <li>"price:", "mass:": all parts together; "line:block:WDB-3": a line of the parts list
 *   <li>"check:voltage-drop:circuit pump, load Pump": both figures of a check, by its code and
 *       subject
 * </ul>
 */
public final class Why {

    private final Kit kit;

    private Why(Kit kit) {
        this.kit = kit;
    }

    /** Why a figure is what it is; empty when the kit has none of that name. */
    public static Optional<Explanation> find(Kit kit, String figure) {
        String[] parts = figure.split(":", 2);
        return parts.length < 2 ? Optional.empty() : new Why(kit).find(parts[0], parts[1]);
    }

    private Optional<Explanation> find(String kind, String of) {
        Job job = kit.job();
        return switch (kind) {
            case "running" ->
                    circuit(of)
                            .map(
                                    circuit ->
                                            CurrentFormulas.running(
                                                    circuit.resolved().circuit(), job.supply()))
                            .map(Why::explained);
            case "start" ->
                    circuit(of)
                            .map(
                                    circuit ->
                                            CurrentFormulas.start(
                                                    circuit.resolved().circuit(), job.supply()))
                            .map(Why::explained);
            case "feed" ->
                    kit.findFeed(of)
                            .filter(feed -> feed.sized().mainDevice().isPresent())
                            .map(feed -> explained(carried(kit, feed)));
            case "cut" ->
                    lead(of).map(lead -> explained(LeadFormulas.cut(lead.lead(), job.choices())));
            case "current" -> lead(of).map(lead -> explained(new LeadCurrents(kit).of(lead)));
            case "drop" ->
                    lead(of).map(
                                    lead ->
                                            explained(
                                                    LeadFormulas.drop(
                                                            lead.lead(), job.surroundings())));
            case "short" -> deadShort(of);
            case "price" ->
                    kit.priced() && of.isEmpty()
                            ? Optional.of(explained(PriceFormulas.total(kit)))
                            : Optional.empty();
            case "mass" ->
                    of.isEmpty()
                            ? Optional.of(explained(PartsFormulas.mass(kit)))
                            : Optional.empty();
            case "line" ->
                    kit.priced()
                            ? PriceFormulas.line(kit, of).map(Why::explained)
                            : Optional.empty();
            case "check" -> check(of);
            default -> Optional.empty();
        };
    }

    private static Explanation explained(Derivation derivation) {
        return Explanation.of(derivation.meaning(), derivation);
    }

    private Optional<SizedCircuit> circuit(String id) {
        return kit.findCircuit(id).map(KitCircuit::sized);
    }

    private Optional<KitLead> lead(String id) {
        return kit.leads().filter(lead -> lead.lead().id().equals(id)).findFirst();
    }

    static Derivation carried(Kit kit, KitFeed feed) {
        String id = feed.sized().id();
        List<SizedCircuit> circuits = kit.circuits().stream().map(KitCircuit::sized).toList();
        return CurrentFormulas.feed(
                feed.sized().feed(),
                circuits.stream()
                        .filter(circuit -> circuit.device().isPresent())
                        .filter(circuit -> circuit.resolved().feed().id().equals(id))
                        .toList(),
                circuits.stream()
                        .map(SizedCircuit::resolved)
                        .filter(
                                circuit ->
                                        circuit.circuit()
                                                .relay()
                                                .filter(relay -> relay.triggerFrom().equals(id))
                                                .isPresent())
                        .toList(),
                kit.job().supply());
    }

    /** A device's owner and the circuits whose contacts it feeds too. */
    static List<SizedCircuit> behind(Kit kit, SizedCircuit owner) {
        List<SizedCircuit> all = new ArrayList<>(List.of(owner));
        kit.circuits().stream()
                .map(KitCircuit::sized)
                .filter(
                        circuit ->
                                circuit.resolved()
                                        .circuit()
                                        .contactFrom()
                                        .filter(owner.id()::equals)
                                        .isPresent())
                .forEach(all::add);
        return all;
    }

    private Optional<Explanation> deadShort(String of) {
        int end = of.lastIndexOf(':');
        Optional<ProtectionStudy> study =
                circuit(of.substring(0, Math.max(0, end))).flatMap(SizedCircuit::study);
        String place = of.substring(end + 1);
        return study.map(ProtectionStudy::formulas)
                .flatMap(
                        formulas ->
                                place.equals(DeadShort.Place.AT_DEVICE.code())
                                        ? Optional.of(formulas.highestShort())
                                        : place.equals(DeadShort.Place.FAR_END.code())
                                                ? Optional.of(formulas.lowestShort())
                                                : Optional.empty())
                .map(Why::explained);
    }

    private Optional<Explanation> check(String of) {
        return kit.checks().stream()
                .filter(
                        check ->
                                of.equals(
                                        check.code().code()
                                                + ":"
                                                + check.subject().text().english()))
                .findFirst()
                .map(
                        check -> {
                            CheckFormulas formulas = new CheckFormulas(kit, check);
                            Optional<Derivation> value = formulas.value();
                            Optional<Derivation> limit = formulas.limit();
                            Optional<Text> sources =
                                    value.isPresent() && limit.isPresent()
                                            ? Optional.empty()
                                            : Optional.of(
                                                    Phrase.of(
                                                            "why-sources." + check.code().code()));
                            return new Explanation(
                                    check.subject().text(),
                                    value,
                                    limit,
                                    Optional.of(check),
                                    sources);
                        });
    }
}
