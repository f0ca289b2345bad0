package org.fusewright.core.kit;

import org.fusewright.core.fitting.Arrangement;
import org.fusewright.core.fitting.BlockForm;
import org.fusewright.core.fitting.FittingItem;
import org.fusewright.core.fitting.FittingTask;
import org.fusewright.core.fitting.KnownReasons;
import org.fusewright.core.fitting.PlacedBlock;
import org.fusewright.core.fitting.Rejected;
import org.fusewright.core.fitting.Width;
import org.fusewright.core.job.ArrangementKind;
import org.fusewright.core.quantity.Figures;

import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Why these blocks and not others, in shop language. */
final class FittingWords {

    private static final int MOST_REJECTED = 8;

    private static final Comparator<BlockForm> BY_CLEARANCE =
            Comparator.comparingDouble(BlockForm::clearanceMm);

    private final Arranging arranging;
    private final FittingModel model;
    private final FittingTask task;

    private FittingWords(Arranging arranging) {
        this.arranging = arranging;
        model = arranging.model();
        task = model.task();
    }

    static List<String> of(Arranging arranging, ArrangementKind asked, KnownReasons reasons) {
        return new FittingWords(arranging).list(asked, reasons);
    }

    private List<String> list(ArrangementKind asked, KnownReasons reasons) {
        List<String> words = new ArrayList<>();
        Arrangement picked = arranging.picked();
        if (!picked.blocks().isEmpty()) {
            words.add(what(picked));
        }
        if (asked != arranging.kind()) {
            words.add(
                    "The job asks for all blocks of one type. No one type takes every part any"
                            + " more, so these are the cheapest blocks instead.");
        } else if (asked != ArrangementKind.CHEAPEST) {
            words.add(difference(asked));
        }
        reasons.list(task, arranging.cheapest()).stream()
                .limit(MOST_REJECTED)
                .map(this::rejection)
                .forEach(words::add);
        for (FittingItem item : task.items()) {
            if (picked.unplaced().contains(item.id())) {
                words.add(smallestChange(item));
            }
        }
        return words;
    }

    private String what(Arrangement arrangement) {
        Map<BlockForm, Integer> forms = new LinkedHashMap<>();
        int positions = 0;
        int pairs = 0;
        for (PlacedBlock block : arrangement.blocks()) {
            forms.merge(block.form(), 1, Integer::sum);
            positions += block.form().positions();
            pairs += block.form().relayPairStarts().size();
        }
        int relays = 0;
        int devices = 0;
        for (FittingItem item : task.items()) {
            boolean placed = !arrangement.unplaced().contains(item.id());
            relays += placed && item.width() == Width.RELAY_PAIR ? 1 : 0;
            devices += placed && item.width() == Width.POSITION ? 1 : 0;
        }
        int free = positions - devices - 2 * relays;
        return listed(forms)
                + ": "
                + counted(positions, "position")
                + (pairs > 0 ? " with " + counted(pairs, "relay pair") : "")
                + " for "
                + counted(devices, "device")
                + (relays > 0 ? " and " + counted(relays, "relay") : "")
                + (free > 0 ? ", " + free + " free" : ", none free")
                + "; "
                + money(arrangement.costMicros())
                + " with caps, wedges and plugs.";
    }

    private String difference(ArrangementKind asked) {
        long more = arranging.picked().costMicros() - arranging.cheapest().costMicros();
        String kind =
                switch (asked) {
                    case CHEAPEST -> "the least cost";
                    case FEWEST_BLOCKS -> "the fewest blocks";
                    case MOST_SPARE -> "most spare positions";
                    case COOLEST -> "the least current for a position of any block";
                    case ONE_BLOCK_TYPE -> "all blocks of one type";
                };
        return "Picked for "
                + kind
                + (more == 0
                        ? "; the cheapest blocks cost the same."
                        : "; the cheapest blocks would cost " + money(more) + " less.");
    }

    private String rejection(Rejected rejected) {
        String set = listed(rejected.blocks());
        String cost = money(rejected.costMicros());
        return switch (rejected.rule()) {
            case SPARE_POSITIONS ->
                    "Without the "
                            + counted(task.sparePositions(), "spare position")
                            + " asked for, "
                            + set
                            + " would do for "
                            + cost
                            + ".";
            case LOCATIONS ->
                    "With all circuits at one location, " + set + " would do for " + cost + ".";
            case FIXED_PLACES -> "Without fixed places, " + set + " would do for " + cost + ".";
            default -> set + " would cost " + cost + ", but " + reason(rejected) + ".";
        };
    }

    private String reason(Rejected rejected) {
        return switch (rejected.rule()) {
            case RELAY_PAIR -> relayReason(rejected.blocks());
            case CAP_CLEARANCE -> capReason(rejected.blocks());
            case POSITION_CURRENT -> positionReason(rejected.blocks());
            case BLOCK_CURRENT -> currentReason(rejected.blocks());
            default -> "no way to share the parts out over them keeps all rules at once";
        };
    }

    private String relayReason(Map<BlockForm, Integer> blocks) {
        List<String> without =
                blocks.keySet().stream()
                        .filter(form -> form.relayPairStarts().isEmpty())
                        .map(BlockForm::block)
                        .distinct()
                        .toList();
        int pairs = 0;
        for (Map.Entry<BlockForm, Integer> form : blocks.entrySet()) {
            pairs += form.getValue() * form.getKey().relayPairStarts().size();
        }
        long relays = task.items().stream().filter(i -> i.width() == Width.RELAY_PAIR).count();
        String needed =
                counted(relays, "relay") + (relays == 1 ? " needs a pair" : " need a pair each");
        if (!without.isEmpty()) {
            return needed + " of neighbouring positions, and " + takesNoRelay(without);
        }
        return needed
                + " of neighbouring positions, and of the "
                + pairs
                + " there not enough stay free of devices";
    }

    private static String takesNoRelay(List<String> blocks) {
        return String.join(" and ", blocks) + (blocks.size() == 1 ? " takes none" : " take none");
    }

    private String capReason(Map<BlockForm, Integer> blocks) {
        BlockForm lowest = blocks.keySet().stream().min(BY_CLEARANCE).orElseThrow();
        long tooTall =
                task.items().stream().filter(i -> i.heightMm() > lowest.clearanceMm()).count();
        double tallest = task.items().stream().mapToDouble(FittingItem::heightMm).max().orElse(0);
        return "cap "
                + lowest.cap()
                + " clears "
                + Figures.of(lowest.clearanceMm())
                + " mm, and "
                + counted(tooTall, "part")
                + (tooTall == 1 ? " stands" : " stand")
                + " up to "
                + Figures.of(tallest)
                + " mm high";
    }

    private String positionReason(Map<BlockForm, Integer> blocks) {
        BlockForm weakest =
                blocks.keySet().stream()
                        .min(Comparator.comparingDouble(FittingWords::mostForOne))
                        .orElseThrow();
        FittingItem strongest =
                task.items().stream()
                        .max(Comparator.comparingDouble(FittingItem::currentA))
                        .orElseThrow();
        return "a position of "
                + weakest.block()
                + " carries at most "
                + Figures.of(mostForOne(weakest))
                + " A, and "
                + named(strongest)
                + " brings "
                + Figures.of(strongest.currentA())
                + " A";
    }

    private static double mostForOne(BlockForm form) {
        return Math.min(form.maxPositionA(), form.maxTotalA());
    }

    private String currentReason(Map<BlockForm, Integer> blocks) {
        double limitA = 0;
        for (Map.Entry<BlockForm, Integer> form : blocks.entrySet()) {
            limitA += form.getValue() * form.getKey().maxTotalA();
        }
        double broughtA = task.items().stream().mapToDouble(FittingItem::currentA).sum();
        return broughtA > limitA
                ? "they carry "
                        + Figures.of(limitA)
                        + " A together, and the parts bring "
                        + Figures.of(broughtA)
                        + " A"
                : "however the parts are shared out, one of them gets more current than it carries";
    }

    /** What one change would let the part in; of several the one that changes least is first. */
    private String smallestChange(FittingItem item) {
        String start = capitalised(named(item)) + " fits no stocked block. ";
        boolean relay = item.width() == Width.RELAY_PAIR;
        List<BlockForm> wide =
                task.forms().stream()
                        .filter(form -> !relay || !form.relayPairStarts().isEmpty())
                        .toList();
        if (wide.isEmpty()) {
            return start
                    + (relay
                            ? "Smallest change: do without this relay, or stock a block with a"
                                    + " relay pair."
                            : "Smallest change: stock a block with a cap that closes it.");
        }
        Optional<BlockForm> lowByCap =
                wide.stream().filter(form -> mostForOne(form) >= item.currentA()).max(BY_CLEARANCE);
        if (lowByCap.isPresent()) {
            BlockForm form = lowByCap.get();
            return start
                    + "Smallest change: a cap for "
                    + form.block()
                    + " that clears "
                    + Figures.of(item.heightMm())
                    + " mm; the tallest stocked, "
                    + form.cap()
                    + ", clears "
                    + Figures.of(form.clearanceMm())
                    + " mm."
                    + (relay ? " Or do without this relay." : "");
        }
        double mostA = wide.stream().mapToDouble(FittingWords::mostForOne).max().orElseThrow();
        double parts = Math.ceil(item.currentA() / mostA);
        return start
                + "Smallest change: share its "
                + Figures.of(item.currentA())
                + " A out over "
                + Figures.of(parts)
                + " circuits, as a position carries at most "
                + Figures.of(mostA)
                + " A, or feed it outside the blocks.";
    }

    private static String named(FittingItem item) {
        int cut = item.id().lastIndexOf('/');
        return "the " + item.id().substring(cut + 1) + " of " + item.id().substring(0, cut);
    }

    private static String capitalised(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }

    private static String listed(Map<BlockForm, Integer> forms) {
        return forms.entrySet().stream()
                .map(
                        form ->
                                form.getValue()
                                        + " × "
                                        + form.getKey().block()
                                        + " with cap "
                                        + form.getKey().cap())
                .collect(Collectors.joining(", "));
    }

    private static String counted(long number, String thing) {
        return number + " " + thing + (number == 1 ? "" : "s");
    }

    private String money(long micros) {
        return model.money(micros).rounded(2, RoundingMode.HALF_UP).getAmount().setScale(2)
                + " "
                + model.prices().currency().getCode();
    }
}
