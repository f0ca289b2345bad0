package org.fusewright.core.kit;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Relay;
import org.fusewright.core.catalog.Seal;
import org.fusewright.core.catalog.Terminal;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.check.Basis;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.Check.Measured;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Subject;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.fitting.Arrangement;
import org.fusewright.core.fitting.BlockForm;
import org.fusewright.core.fitting.FittingItem;
import org.fusewright.core.fitting.Place;
import org.fusewright.core.fitting.Width;
import org.fusewright.core.job.ResolvedCircuit;
import org.fusewright.core.job.ResolvedJob;
import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.fusewright.core.words.Unit;
import org.jspecify.annotations.Nullable;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The checks of what was fitted and counted: blocks, caps, cavities, stock. */
final class KitChecks {

    private static final Basis CLEARANCE = Basis.of("basis.cap-clearance");
    private static final Basis BLOCK_TOTAL = Basis.of("basis.block-current");
    private static final Basis POSITION_CURRENT = Basis.of("basis.position-current");
    private static final Basis WEDGE = Basis.of("basis.wedge-fitted");
    private static final Basis FILLED = Basis.of("basis.cavities-plugged");
    private static final Basis ONE_LEAD = Basis.of("basis.one-lead-per-cavity");
    private static final Basis CRIMP_RANGE = Basis.of("basis.terminal-fit");
    private static final Basis SEAL_RANGE = Basis.of("basis.seal-fit");
    private static final Basis BLOCKS_STOCKED = Basis.of("basis.blocks-stocked");
    private static final Basis OFFERS = Basis.of("basis.offers");
    private static final Basis COLOURS_STOCKED = Basis.of("basis.colours-stocked");

    private static final Text COLOUR = Phrase.of("subject.colour");
    private static final Text WEDGE_IN_KIT = Phrase.of("wedge-fitted.in-kit");
    private static final Text NO_WEDGE_FITS = Phrase.of("wedge-fitted.none-fits");
    private static final Text WEDGE_LEFT_OUT = Phrase.of("wedge-fitted.left-out");
    private static final Text ALL_PLUGGED = Phrase.of("cavities-plugged.all");
    private static final Text NO_RELAY_PAIR = Phrase.of("stocked.no-relay-pair");
    private static final Text NO_BLOCK_WITH_CAP = Phrase.of("stocked.no-block");
    private static final Text NO_CAP_CLEARS = Phrase.of("cap-clearance.none");
    private static final Text NO_BLOCK_CARRIES = Phrase.of("block-current.none-carries");
    private static final Text ALL_OFFERED = Phrase.of("stocked.all-offered");

    private final List<Check> checks = new ArrayList<>();

    private KitChecks() {}

    static List<Check> of(
            List<KitBlock> blocks,
            FittingModel model,
            Arrangement arrangement,
            List<KitLead> leads,
            List<PartLine> parts,
            ResolvedJob job) {
        KitChecks all = new KitChecks();
        Map<String, FittingItem> items = new LinkedHashMap<>();
        model.task().items().forEach(item -> items.put(item.id(), item));
        Map<String, Integer> leadEnds = countEnds(leads);
        for (KitBlock block : blocks) {
            if (!block.seats().isEmpty()) {
                all.checkClearance(block);
                all.checkCurrent(block, items);
            }
            all.checkWedge(block, job);
            all.checkPlugs(block);
            all.checkOneLeadPerCavity(block, leadEnds);
            List<SizeInBlock> sizes = listSizes(block);
            all.checkTerminals(block, sizes, job);
            all.checkSeals(block, sizes, job);
        }
        for (String unplaced : arrangement.unplaced()) {
            all.explainUnplaced(items.get(unplaced), model.task().forms());
        }
        for (FittingItem item : items.values()) {
            if (!arrangement.unplaced().contains(item.id())) {
                item.place()
                        .filter(Place::fixed)
                        .ifPresent(
                                place ->
                                        all.checkPlace(
                                                item,
                                                place,
                                                arrangement.released().contains(item.id()),
                                                blocks));
            }
        }
        all.checkStock(parts);
        job.circuits().forEach(all::checkColour);
        return all.checks;
    }

    private void checkClearance(KitBlock block) {
        KitBlock.Seat tallest = block.seats().getFirst();
        for (KitBlock.Seat seat : block.seats()) {
            tallest = height(seat) > height(tallest) ? seat : tallest;
        }
        double height = height(tallest);
        double clearance = block.cap().clearanceMm();
        checks.add(
                Check.atMost(
                        CheckCode.CAP_CLEARANCE,
                        Subject.block(block.id()),
                        new Measured(height, clearance, "mm"),
                        Verdict.FAIL,
                        Phrase.of(
                                "cap-clearance.tallest",
                                tallest.part().number(),
                                millimetres(height),
                                block.cap().number(),
                                millimetres(clearance)),
                        CLEARANCE));
    }

    private static Amount millimetres(double lengthMm) {
        return new Amount(lengthMm, Unit.MILLIMETRE, 2);
    }

    private static Amount amperes(double currentA) {
        return new Amount(currentA, Unit.AMPERE, 2);
    }

    private static double height(KitBlock.Seat seat) {
        return seat.part() instanceof Relay relay
                ? relay.heightMm()
                : ((Device) seat.part()).heightMm();
    }

    private void checkCurrent(KitBlock block, Map<String, FittingItem> items) {
        double totalA = 0;
        double worstA = 0;
        String worst = "";
        for (KitBlock.Seat seat : block.seats()) {
            double currentA = items.get(itemOf(seat)).currentA();
            totalA += currentA;
            if (currentA > worstA) {
                worstA = currentA;
                worst = PartsList.place(block, seat);
            }
        }
        double limitA = block.block().maxTotalA();
        checks.add(
                Check.atMost(
                        CheckCode.BLOCK_CURRENT,
                        Subject.block(block.id()),
                        new Measured(totalA, limitA, "A"),
                        Verdict.FAIL,
                        Phrase.of("block-current.total", amperes(totalA), amperes(limitA)),
                        BLOCK_TOTAL));
        checks.add(
                Check.atMost(
                        CheckCode.BLOCK_CURRENT,
                        Subject.block(block.id()).detail(Phrase.of("subject.position", worst)),
                        new Measured(worstA, block.block().maxPositionA(), "A"),
                        Verdict.FAIL,
                        Phrase.of(
                                "block-current.position",
                                amperes(worstA),
                                amperes(block.block().maxPositionA())),
                        POSITION_CURRENT));
    }

    private static String itemOf(KitBlock.Seat seat) {
        return seat.part() instanceof Relay
                ? FittingModel.relayItem(seat.circuit())
                : FittingModel.deviceItem(seat.circuit());
    }

    private void checkWedge(KitBlock block, ResolvedJob job) {
        boolean fitted = block.wedge().isPresent();
        Text says =
                fitted
                        ? WEDGE_IN_KIT
                        : job.job().choices().lockingWedge() ? NO_WEDGE_FITS : WEDGE_LEFT_OUT;
        checks.add(
                Check.atLeast(
                        CheckCode.WEDGE_FITTED,
                        Subject.block(block.id()),
                        new Measured(fitted ? 1 : 0, 1, ""),
                        Verdict.CAUTION,
                        says,
                        WEDGE));
    }

    private void checkPlugs(KitBlock block) {
        int open = 0;
        for (Cavity cavity : block.cavities()) {
            open += cavity.occupant().isEmpty() && cavity.plug().isEmpty() ? 1 : 0;
        }
        checks.add(
                Check.atMost(
                        CheckCode.CAVITIES_PLUGGED,
                        Subject.block(block.id()),
                        new Measured(open, 0, ""),
                        Verdict.CAUTION,
                        open == 0 ? ALL_PLUGGED : Phrase.of("cavities-plugged.open", open),
                        FILLED));
    }

    /** How many leads end at each place of the drawing. */
    private static Map<String, Integer> countEnds(List<KitLead> leads) {
        Map<String, Integer> ends = new HashMap<>();
        for (KitLead lead : leads) {
            ends.merge(lead.from(), 1, Integer::sum);
            ends.merge(lead.to(), 1, Integer::sum);
        }
        return ends;
    }

    private void checkOneLeadPerCavity(KitBlock block, Map<String, Integer> ends) {
        int occupied = 0;
        int leadEnds = 0;
        for (Cavity cavity : block.cavities()) {
            occupied += cavity.occupant().isPresent() ? 1 : 0;
            leadEnds += ends.getOrDefault(cavity.id(), 0);
        }
        checks.add(
                Check.atMost(
                        CheckCode.ONE_LEAD_PER_CAVITY,
                        Subject.block(block.id()),
                        new Measured(leadEnds, occupied, ""),
                        Verdict.FAIL,
                        Phrase.of("one-lead-per-cavity.ends", leadEnds, occupied),
                        ONE_LEAD));
    }

    private void checkTerminals(KitBlock block, List<SizeInBlock> sizes, ResolvedJob job) {
        double largestMm2 = 0;
        for (Terminal terminal : job.stock().list(Terminal.class)) {
            if (terminal.family().equals(block.block().terminalFamily())) {
                largestMm2 = Math.max(largestMm2, terminal.maxAreaMm2());
            }
        }
        for (SizeInBlock size : sizes) {
            Wire wire = size.wire();
            Optional<Terminal> terminal = size.occupant().terminal();
            double areaMm2 = wire.copperMm2();
            checks.add(
                    fit(
                            CheckCode.TERMINAL_FIT,
                            Subject.block(block.id()).detail(size.leads()),
                            new Measured(
                                    areaMm2,
                                    terminal.map(Terminal::maxAreaMm2).orElse(largestMm2),
                                    "mm2"),
                            terminal.map(
                                    t ->
                                            Phrase.of(
                                                    "terminal-fit.crimps",
                                                    t.number(),
                                                    Amount.area(t.minAreaMm2()).bare(),
                                                    Amount.area(t.maxAreaMm2()),
                                                    wire.size(),
                                                    Amount.area(areaMm2))),
                            Phrase.of("terminal-fit.none", wire.size()),
                            CRIMP_RANGE));
        }
    }

    private void checkSeals(KitBlock block, List<SizeInBlock> sizes, ResolvedJob job) {
        double largestMm = 0;
        for (Seal seal : job.stock().list(Seal.class)) {
            if (seal.family().equals(block.block().terminalFamily())) {
                largestMm = Math.max(largestMm, seal.maxOutsideMm());
            }
        }
        for (SizeInBlock size : sizes) {
            Wire wire = size.wire();
            Optional<Seal> seal = size.occupant().seal();
            checks.add(
                    fit(
                            CheckCode.SEAL_FIT,
                            Subject.block(block.id()).detail(size.leads()),
                            new Measured(
                                    wire.outsideMm(),
                                    seal.map(Seal::maxOutsideMm).orElse(largestMm),
                                    "mm"),
                            seal.map(
                                    s ->
                                            Phrase.of(
                                                    "seal-fit.closes",
                                                    s.number(),
                                                    millimetres(s.minOutsideMm()).bare(),
                                                    millimetres(s.maxOutsideMm()),
                                                    millimetres(wire.outsideMm()))),
                            Phrase.of("seal-fit.none", millimetres(wire.outsideMm())),
                            SEAL_RANGE));
        }
    }

    /** A part found is a pass by its own range; a part not found is a fail. */
    private static Check fit(
            CheckCode code,
            Subject subject,
            Measured measured,
            Optional<Phrase> found,
            Text missing,
            Basis basis) {
        double margin = measured.limit() == 0 ? -1 : 1 - measured.value() / measured.limit();
        return new Check(
                code,
                subject,
                measured.value(),
                measured.limit(),
                measured.unit(),
                found.isPresent() ? margin : Math.min(margin, -0.0001),
                found.isPresent() ? Verdict.PASS : Verdict.FAIL,
                found.isPresent() ? found.get() : missing,
                basis);
    }

    /**
     * A family and size of wire that ends in a block.
     *
     * @param leads these leads in words
     * @param occupant the first of them
     */
    private record SizeInBlock(Text leads, Cavity.Occupant occupant) {

        Wire wire() {
            return occupant.lead().wire();
        }

        boolean isSizeOf(Wire other) {
            return wire().family().equals(other.family()) && wire().size().equals(other.size());
        }
    }

    /**
     * Each family and size that ends in the block; its colours fit alike, and one that is thicker
     * than the others stands for itself.
     */
    private static List<SizeInBlock> listSizes(KitBlock block) {
        List<SizeInBlock> sizes = new ArrayList<>();
        for (Cavity cavity : block.cavities()) {
            cavity.occupant().ifPresent(occupant -> note(sizes, occupant));
        }
        return sizes;
    }

    private static void note(List<SizeInBlock> sizes, Cavity.Occupant occupant) {
        Wire wire = occupant.lead().wire();
        @Nullable SizeInBlock first = null;
        for (SizeInBlock size : sizes) {
            if (size.wire().number().equals(wire.number())) {
                return;
            }
            if (first == null && size.isSizeOf(wire)) {
                first = size;
            }
        }
        if (first == null) {
            Text leads = Phrase.of("subject.leads", wire.family(), wire.size().label());
            sizes.add(new SizeInBlock(leads, occupant));
        } else if (first.wire().outsideMm() != wire.outsideMm()) {
            Text leads = Phrase.of("subject.leads-of-part", wire.number().value());
            sizes.add(new SizeInBlock(leads, occupant));
        }
    }

    private void explainUnplaced(FittingItem item, List<BlockForm> forms) {
        String circuit = item.id().substring(0, item.id().lastIndexOf('/'));
        Subject subject = Subject.circuit(circuit).detail(item.id());
        boolean isRelay = item.width() == Width.RELAY_PAIR;
        List<BlockForm> wideEnough =
                forms.stream().filter(f -> !isRelay || !f.relayPairStarts().isEmpty()).toList();
        if (wideEnough.isEmpty()) {
            checks.add(
                    Check.atLeast(
                            CheckCode.STOCKED,
                            subject,
                            new Measured(0, 1, ""),
                            Verdict.FAIL,
                            isRelay ? NO_RELAY_PAIR : NO_BLOCK_WITH_CAP,
                            BLOCKS_STOCKED));
            return;
        }
        double clearanceMm =
                wideEnough.stream().mapToDouble(BlockForm::clearanceMm).max().orElseThrow();
        if (item.heightMm() > clearanceMm) {
            checks.add(
                    Check.atMost(
                            CheckCode.CAP_CLEARANCE,
                            subject,
                            new Measured(item.heightMm(), clearanceMm, "mm"),
                            Verdict.FAIL,
                            NO_CAP_CLEARS,
                            CLEARANCE));
            return;
        }
        double limitA =
                wideEnough.stream()
                        .mapToDouble(f -> Math.min(f.maxPositionA(), f.maxTotalA()))
                        .max()
                        .orElseThrow();
        checks.add(
                new Check(
                        CheckCode.BLOCK_CURRENT,
                        subject,
                        item.currentA(),
                        limitA,
                        "A",
                        (limitA - item.currentA()) / limitA,
                        Verdict.FAIL,
                        NO_BLOCK_CARRIES,
                        POSITION_CURRENT));
    }

    private void checkPlace(
            FittingItem item, Place place, boolean released, List<KitBlock> blocks) {
        String circuit = item.id().substring(0, item.id().lastIndexOf('/'));
        boolean relay = item.width() == Width.RELAY_PAIR;
        Text sits = KitFit.placeOf(circuit, relay, blocks);
        String asked = KitFit.nameOf(place);
        checks.add(
                Check.atLeast(
                        CheckCode.PLACE_KEPT,
                        Subject.circuit(circuit).detail(item.id()),
                        new Measured(released ? 0 : 1, 1, ""),
                        Verdict.FAIL,
                        released
                                ? Phrase.of("place-kept.released", place.block(), asked, sits)
                                : Phrase.of("place-kept.kept", sits),
                        Basis.of("basis.place-kept")));
    }

    private void checkStock(List<PartLine> parts) {
        List<String> missing = new ArrayList<>();
        for (PartLine line : parts) {
            if (line.unitPrice().isZero()) {
                missing.add(line.part().number().value());
            }
        }
        checks.add(
                Check.atLeast(
                        CheckCode.STOCKED,
                        Subject.job(),
                        new Measured(parts.size() - missing.size(), parts.size(), ""),
                        Verdict.FAIL,
                        missing.isEmpty()
                                ? ALL_OFFERED
                                : Phrase.of("stocked.no-offer", String.join(", ", missing)),
                        OFFERS));
    }

    private void checkColour(ResolvedCircuit circuit) {
        circuit.colourAsked()
                .ifPresent(
                        asked ->
                                checks.add(
                                        Check.atLeast(
                                                CheckCode.STOCKED,
                                                Subject.circuit(circuit.id()).detail(COLOUR),
                                                new Measured(0, 1, ""),
                                                Verdict.CAUTION,
                                                Phrase.of(
                                                        "stocked.other-colour",
                                                        asked,
                                                        circuit.colour()),
                                                COLOURS_STOCKED)));
    }
}
