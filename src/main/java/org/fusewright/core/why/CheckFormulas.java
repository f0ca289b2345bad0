package org.fusewright.core.why;

import static org.fusewright.core.formula.Expression.of;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.catalog.Relay;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.Subject.Scope;
import org.fusewright.core.formula.Derivation;
import org.fusewright.core.formula.Expression;
import org.fusewright.core.formula.Quantity;
import org.fusewright.core.job.Job;
import org.fusewright.core.job.ResolvedCircuit;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitBlock;
import org.fusewright.core.kit.KitCircuit;
import org.fusewright.core.kit.KitFeed;
import org.fusewright.core.sizing.CurrentFormulas;
import org.fusewright.core.sizing.Lead;
import org.fusewright.core.sizing.LeadFormulas;
import org.fusewright.core.sizing.LeadRole;
import org.fusewright.core.sizing.ProtectionStudy;
import org.fusewright.core.sizing.SizedCircuit;
import org.fusewright.core.sizing.WayFormulas;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Unit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** The formulas behind value and limit of one check, where it has any. */
final class CheckFormulas {

    private final Kit kit;
    private final Job job;
    private final Check check;

    CheckFormulas(Kit kit, Check check) {
        this.kit = kit;
        this.job = kit.job();
        this.check = check;
    }

    Optional<Derivation> value() {
        return switch (check.code()) {
            case RUNNING_LOAD -> circuit().map(c -> CurrentFormulas.carried(Why.behind(kit, c)));
            case FEED_LOAD -> feed().map(f -> Why.carried(kit, f));
            case INTERRUPTING_CAPACITY -> highestShort();
            case FAULT_CLEARING -> lowestShort();
            case VOLTAGE_DROP -> drop();
            case RELAY_CONTACT ->
                    circuit()
                            .map(
                                    c ->
                                            CurrentFormulas.contact(
                                                    c.resolved().circuit(), job.supply()));
            case CHARGING_BALANCE -> isPlainly("A") ? Optional.of(continuous()) : Optional.empty();
            case BLOCK_CURRENT -> isOfWholeSubject() ? block().map(this::total) : Optional.empty();
            case AUTOMATIC_RESTART -> circuit().map(this::restarting);
            case LIGHTING_SEPARATION ->
                    Optional.of(CountFormulas.devicesOfLamps(circuits().toList()));
            case CAVITIES_PLUGGED -> block().map(CountFormulas::unplugged);
            case ONE_LEAD_PER_CAVITY -> block().map(b -> CountFormulas.leadEnds(kit, b));
            case STOCKED ->
                    isOfJob() && kit.priced()
                            ? Optional.of(
                                    PartsFormulas.lines(
                                            kit.parts().stream()
                                                    .filter(line -> !line.unitPrice().isZero())
                                                    .toList(),
                                            Phrase.of("formula.offered-lines")))
                            : Optional.empty();
            default -> Optional.empty();
        };
    }

    Optional<Derivation> limit() {
        return switch (check.code()) {
            case RUNNING_LOAD ->
                    circuit()
                            .map(
                                    c ->
                                            CurrentFormulas.mayCarry(
                                                    c.device().orElseThrow(),
                                                    isMomentary(c),
                                                    job.surroundings().blockAmbient()));
            case FEED_LOAD ->
                    feed().map(
                                    f ->
                                            CurrentFormulas.mayCarry(
                                                    f.sized().mainDevice().orElseThrow(),
                                                    false,
                                                    job.surroundings().ambient()));
            case OVERLOAD_PROTECTION -> isPlainly("A") ? weakest() : Optional.empty();
            case ONE_LEAD_PER_CAVITY -> block().map(CountFormulas::occupied);
            case STOCKED ->
                    isOfJob()
                            ? Optional.of(
                                    PartsFormulas.lines(kit.parts(), Phrase.of("formula.lines")))
                            : Optional.empty();
            case RELAY_COIL ->
                    check.unit().equals("V")
                            ? circuit()
                                    .map(
                                            c ->
                                                    CurrentFormulas.pullIn(
                                                            c.resolved(),
                                                            job.surroundings().blockAmbient()))
                            : Optional.empty();
            case CHARGING_BALANCE ->
                    isOfWholeSubject() && job.supply().chargingOutputA().isPresent()
                            ? Optional.of(
                                    CurrentFormulas.outputShare(
                                            job.supply().chargingOutputA().getAsDouble()))
                            : Optional.empty();
            default -> Optional.empty();
        };
    }

    private boolean isPlainly(String unit) {
        return check.unit().equals(unit);
    }

    /** Whether it speaks of its circuit, feed, block or job as a whole. */
    private boolean isOfWholeSubject() {
        return !((Phrase) check.subject().text()).key().equals("subject.detail");
    }

    private boolean isOfJob() {
        return check.subject().scope() == Scope.JOB;
    }

    private Stream<SizedCircuit> circuits() {
        return kit.circuits().stream().map(KitCircuit::sized);
    }

    private Optional<SizedCircuit> circuit() {
        return check.subject().scope() == Scope.CIRCUIT
                ? kit.findCircuit(check.subject().id()).map(KitCircuit::sized)
                : Optional.empty();
    }

    private Optional<KitFeed> feed() {
        return check.subject().scope() == Scope.FEED
                ? kit.findFeed(check.subject().id())
                : Optional.empty();
    }

    private Optional<KitBlock> block() {
        return kit.blocks().stream().filter(b -> b.id().equals(check.subject().id())).findFirst();
    }

    /** The circuit whose device protects a circuit. */
    private SizedCircuit owner(SizedCircuit circuit) {
        return circuit.resolved()
                .circuit()
                .contactFrom()
                .flatMap(kit::findCircuit)
                .map(KitCircuit::sized)
                .orElse(circuit);
    }

    private boolean isMomentary(SizedCircuit owner) {
        return Why.behind(kit, owner).stream().allMatch(c -> c.resolved().circuit().isMomentary());
    }

    private Optional<WayFormulas> way() {
        return circuit()
                .map(this::owner)
                .flatMap(SizedCircuit::study)
                .map(ProtectionStudy::formulas);
    }

    private Optional<Derivation> highestShort() {
        return feed().isPresent()
                ? circuits()
                        .filter(c -> c.resolved().feed().id().equals(check.subject().id()))
                        .flatMap(c -> c.study().stream())
                        .findFirst()
                        .map(study -> study.formulas().highestShortAtMain())
                : way().map(WayFormulas::highestShort);
    }

    private Optional<Derivation> lowestShort() {
        return way().map(way -> way.lowestShort(check.subject().id()));
    }

    private Optional<Derivation> drop() {
        SizedCircuit circuit = circuit().orElseThrow();
        String load = "circuit " + circuit.id() + ", load ";
        String subject = check.subject().text().english();
        for (int i = 0; i < circuit.loads().size(); i++) {
            if (subject.equals(load + circuit.loads().get(i).title())) {
                int index = i;
                return way().map(way -> way.dropPercent(circuit.id(), index));
            }
        }
        return Optional.empty();
    }

    /** What the lead that carries least may carry, of those behind the device. */
    private Optional<Derivation> weakest() {
        Stream<Lead> leads =
                feed().map(this::behindMain)
                        .orElseGet(
                                () ->
                                        circuit().orElseThrow().leads().stream()
                                                .filter(lead -> !isCoilLead(lead)));
        return leads.map(Lead::wire)
                .distinct()
                .map((Wire wire) -> LeadFormulas.allowed(wire, job.surroundings()))
                .min(Comparator.comparingDouble(Derivation::result));
    }

    private static boolean isCoilLead(Lead lead) {
        return lead.role() == LeadRole.TRIGGER || lead.role() == LeadRole.GROUND;
    }

    private Stream<Lead> behindMain(KitFeed feed) {
        Stream<Lead> triggers =
                circuits()
                        .filter(
                                c ->
                                        c.resolved()
                                                .circuit()
                                                .relay()
                                                .filter(
                                                        r ->
                                                                r.triggerFrom()
                                                                        .equals(feed.sized().id()))
                                                .isPresent())
                        .flatMap(c -> c.leads().stream())
                        .filter(lead -> lead.role() == LeadRole.TRIGGER);
        return Stream.concat(feed.sized().leads().stream().skip(1), triggers);
    }

    private Derivation continuous() {
        List<ResolvedCircuit> resolved = circuits().map(SizedCircuit::resolved).toList();
        return CurrentFormulas.continuous(resolved, job.supply());
    }

    private Derivation restarting(SizedCircuit circuit) {
        Device device = owner(circuit).device().orElseThrow();
        return CountFormulas.restarting(
                circuit, device.number().value(), device.kind() == DeviceKind.AUTO_RESET);
    }

    /** What all devices and relays in a block carry together. */
    private Derivation total(KitBlock block) {
        List<Expression> terms = new ArrayList<>();
        for (KitBlock.Seat seat : block.seats()) {
            SizedCircuit circuit = kit.findCircuit(seat.circuit()).orElseThrow().sized();
            boolean relay = seat.part() instanceof Relay;
            terms.add(
                    of(
                            Quantity.workedOut(
                                    "I_" + (terms.size() + 1),
                                    relay ? circuit.runningA() : circuit.carriedA(),
                                    Unit.AMPERE,
                                    Phrase.of(
                                            relay ? "formula.runs" : "formula.carries",
                                            circuit.id()))));
        }
        return new Derivation(
                "I",
                Phrase.of("formula.block-carries", block.id()),
                Unit.AMPERE,
                Expression.sum(terms));
    }
}
