package org.fusewright.core.kit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
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
import org.fusewright.core.job.ResolvedCircuit;
import org.fusewright.core.job.ResolvedJob;

/** The checks of what was fitted and counted: blocks, caps, cavities, stock. */
final class KitChecks {

    private final List<Check> checks = new ArrayList<>();

    private KitChecks() {}

    static List<Check> of(
            List<KitBlock> blocks,
            FittingModel model,
            Arrangement arrangement,
            List<PartLine> parts,
            ResolvedJob job) {
        KitChecks all = new KitChecks();
        Map<String, FittingItem> items = new LinkedHashMap<>();
        model.task().items().forEach(item -> items.put(item.id(), item));
        for (KitBlock block : blocks) {
            all.checkClearance(block);
            all.checkCurrent(block, items);
            all.checkWedge(block, job);
            all.checkPlugs(block);
            all.checkOneLeadPerCavity(block);
            all.checkTerminals(block, job);
            all.checkSeals(block, job);
        }
        for (String unplaced : arrangement.unplaced()) {
            all.explainUnplaced(items.get(unplaced), model.task().forms());
        }
        all.checkStock(parts);
        job.circuits().forEach(all::checkColour);
        return all.checks;
    }

    private void checkClearance(KitBlock block) {
        KitBlock.Seat tallest =
                block.seats().stream()
                        .max(Comparator.comparingDouble(seat -> height(seat)))
                        .orElseThrow();
        double height = height(tallest);
        double clearance = block.cap().clearanceMm();
        checks.add(
                Check.atMost(
                        CheckCode.CAP_CLEARANCE,
                        Subject.block(block.id()),
                        new Measured(height, clearance, "mm"),
                        Verdict.FAIL,
                        text(
                                "The tallest part, %s, stands %s mm high; cap %s clears %s mm.",
                                tallest.part().number(),
                                number(height),
                                block.cap().number(),
                                number(clearance)),
                        Basis.catalog("device height and cap clearance")));
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
                        text(
                                "All positions together carry %s A; the block takes %s A.",
                                number(totalA), number(limitA)),
                        Basis.catalog("the block's greatest total current")));
        checks.add(
                Check.atMost(
                        CheckCode.BLOCK_CURRENT,
                        Subject.block(block.id()).detail("position " + worst),
                        new Measured(worstA, block.block().maxPositionA(), "A"),
                        Verdict.FAIL,
                        text(
                                "The busiest position carries %s A; a position takes %s A.",
                                number(worstA), number(block.block().maxPositionA())),
                        Basis.catalog("the block's greatest current a position")));
    }

    private static String itemOf(KitBlock.Seat seat) {
        return seat.part() instanceof Relay
                ? FittingModel.relayItem(seat.circuit())
                : FittingModel.deviceItem(seat.circuit());
    }

    private void checkWedge(KitBlock block, ResolvedJob job) {
        boolean fitted = block.wedge().isPresent();
        String says =
                fitted
                        ? "A locking wedge is in the kit; fit it last, and it must seat by hand."
                        : job.job().choices().lockingWedge()
                                ? "No stocked locking wedge fits this block."
                                : "The job leaves the locking wedge out; nothing then proves that"
                                        + " every terminal is home.";
        checks.add(
                Check.atLeast(
                        CheckCode.WEDGE_FITTED,
                        Subject.block(block.id()),
                        new Measured(fitted ? 1 : 0, 1, ""),
                        Verdict.CAUTION,
                        says,
                        Basis.commonPractice("the wedge is optional and good practice")));
    }

    private void checkPlugs(KitBlock block) {
        long open =
                block.cavities().stream()
                        .filter(c -> c.occupant().isEmpty() && c.plug().isEmpty())
                        .count();
        checks.add(
                Check.atMost(
                        CheckCode.CAVITIES_PLUGGED,
                        Subject.block(block.id()),
                        new Measured(open, 0, ""),
                        Verdict.CAUTION,
                        open == 0
                                ? "Every empty cavity has its plug."
                                : open + " empty cavities stay open: the block is not sealed.",
                        Basis.published("AC 43.13-1B chapter 11: unused cavities are filled")));
    }

    private void checkOneLeadPerCavity(KitBlock block) {
        long cavities = block.cavities().stream().filter(c -> c.occupant().isPresent()).count();
        long leadEnds =
                block.cavities().stream()
                        .flatMap(c -> c.occupant().stream())
                        .map(o -> o.circuit() + o.role() + o.lead().id())
                        .distinct()
                        .count();
        checks.add(
                Check.atMost(
                        CheckCode.ONE_LEAD_PER_CAVITY,
                        Subject.block(block.id()),
                        new Measured(leadEnds, cavities, ""),
                        Verdict.FAIL,
                        text("%d leads end in %d cavities, one in each.", leadEnds, cavities),
                        Basis.commonPractice("two wires in one seal do not seal")));
    }

    private void checkTerminals(KitBlock block, ResolvedJob job) {
        double largestMm2 =
                job.stock().list(Terminal.class).stream()
                        .filter(t -> t.family().equals(block.block().terminalFamily()))
                        .mapToDouble(Terminal::maxAreaMm2)
                        .max()
                        .orElse(0);
        for (Map.Entry<Wire, Cavity.Occupant> use : wiresOf(block).entrySet()) {
            Wire wire = use.getKey();
            Optional<Terminal> terminal = use.getValue().terminal();
            double areaMm2 = wire.size().areaMm2();
            checks.add(
                    fit(
                            CheckCode.TERMINAL_FIT,
                            Subject.block(block.id()).detail(wire.number() + " leads"),
                            new Measured(
                                    areaMm2,
                                    terminal.map(Terminal::maxAreaMm2).orElse(largestMm2),
                                    "mm2"),
                            terminal.map(
                                    t ->
                                            text(
                                                    "Terminal %s crimps %s to %s mm2; %s has %s mm2.",
                                                    t.number(),
                                                    number(t.minAreaMm2()),
                                                    number(t.maxAreaMm2()),
                                                    wire.size(),
                                                    number(areaMm2))),
                            text("No stocked terminal of this block takes %s.", wire.size()),
                            Basis.catalog("the terminal's range of conductor areas")));
        }
    }

    private void checkSeals(KitBlock block, ResolvedJob job) {
        double largestMm =
                job.stock().list(Seal.class).stream()
                        .filter(s -> s.family().equals(block.block().terminalFamily()))
                        .mapToDouble(Seal::maxOutsideMm)
                        .max()
                        .orElse(0);
        for (Map.Entry<Wire, Cavity.Occupant> use : wiresOf(block).entrySet()) {
            Wire wire = use.getKey();
            Optional<Seal> seal = use.getValue().seal();
            checks.add(
                    fit(
                            CheckCode.SEAL_FIT,
                            Subject.block(block.id()).detail(wire.number() + " leads"),
                            new Measured(
                                    wire.outsideMm(),
                                    seal.map(Seal::maxOutsideMm).orElse(largestMm),
                                    "mm"),
                            seal.map(
                                    s ->
                                            text(
                                                    "Seal %s closes on %s to %s mm; the lead is %s mm thick.",
                                                    s.number(),
                                                    number(s.minOutsideMm()),
                                                    number(s.maxOutsideMm()),
                                                    number(wire.outsideMm()))),
                            text(
                                    "No stocked seal of this block closes on %s mm.",
                                    number(wire.outsideMm())),
                            Basis.catalog("the seal's range of outside diameters")));
        }
    }

    /** A part found is a pass by its own range; a part not found is a fail. */
    private static Check fit(
            CheckCode code,
            Subject subject,
            Measured measured,
            Optional<String> found,
            String missing,
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
                found.orElse(missing),
                basis);
    }

    /** One occupant for each wire that ends in the block: colours of one size fit alike. */
    private static Map<Wire, Cavity.Occupant> wiresOf(KitBlock block) {
        Map<Wire, Cavity.Occupant> wires = new LinkedHashMap<>();
        for (Cavity cavity : block.cavities()) {
            cavity.occupant().ifPresent(o -> wires.putIfAbsent(o.lead().wire(), o));
        }
        return wires;
    }

    private void explainUnplaced(FittingItem item, List<BlockForm> forms) {
        String circuit = item.id().substring(0, item.id().lastIndexOf('/'));
        Subject subject = Subject.circuit(circuit).detail(item.id());
        boolean isRelay = item.width() == FittingItem.Width.RELAY_PAIR;
        List<BlockForm> wideEnough =
                forms.stream().filter(f -> !isRelay || !f.relayPairStarts().isEmpty()).toList();
        if (wideEnough.isEmpty()) {
            checks.add(
                    Check.atLeast(
                            CheckCode.STOCKED,
                            subject,
                            new Measured(0, 1, ""),
                            Verdict.FAIL,
                            isRelay
                                    ? "No stocked block has a relay pair."
                                    : "No block with a cap is in stock.",
                            Basis.catalog("blocks and caps with offers")));
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
                            "No stocked cap clears it.",
                            Basis.catalog("device height and cap clearance")));
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
                        "No stocked block with a cap tall enough carries its current; split the"
                                + " circuit or feed it outside the block.",
                        Basis.catalog("the block's greatest current a position")));
    }

    private void checkStock(List<PartLine> parts) {
        List<String> missing =
                parts.stream()
                        .filter(line -> line.unitPrice().isZero())
                        .map(line -> line.part().number().value())
                        .toList();
        checks.add(
                Check.atLeast(
                        CheckCode.STOCKED,
                        Subject.job(),
                        new Measured(parts.size() - missing.size(), parts.size(), ""),
                        Verdict.FAIL,
                        missing.isEmpty()
                                ? "Every part has an offer."
                                : "No offer for " + String.join(", ", missing) + ".",
                        Basis.catalog("offers in the job's currency")));
    }

    private void checkColour(ResolvedCircuit circuit) {
        circuit.colourAsked()
                .ifPresent(
                        asked ->
                                checks.add(
                                        Check.atLeast(
                                                CheckCode.STOCKED,
                                                Subject.circuit(circuit.id()).detail("colour"),
                                                new Measured(0, 1, ""),
                                                Verdict.CAUTION,
                                                text(
                                                        "%s is not stocked; the leads are %s: mark"
                                                                + " them at both ends.",
                                                        asked, circuit.colour()),
                                                Basis.catalog("wire colours with offers"))));
    }

    private static String text(String form, Object... values) {
        return String.format(Locale.ROOT, form, values);
    }

    /** At most two decimals, none that are zero. */
    private static String number(double value) {
        String fixed = String.format(Locale.ROOT, "%.2f", value);
        return fixed.replaceAll("0+$", "").replaceAll("\\.$", "");
    }
}
