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
import org.fusewright.core.kit.Arranging.Pick;
import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Price;
import org.fusewright.core.words.Text;
import org.fusewright.core.words.Unit;

import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Why these blocks and not others, in shop language. */
final class FittingWords {

    private static final int MOST_REJECTED = 8;

    private static final String WHAT = "fitting.what";
    private static final int SLOTS_BEFORE_COST = 4;

    private static final Text NOT_OF_ONE_TYPE = Phrase.of("fitting.not-of-one-type");
    private static final Text NONE_FREE = Phrase.of("fitting.none-free");
    private static final Text NOT_ALL_RULES = Phrase.of("fitting.not-all-rules");
    private static final Text CURRENT_BEYOND_ONE = Phrase.of("fitting.current-beyond-one");
    private static final Text STOCK_A_PAIR = Phrase.of("fitting.change-stock-pair");
    private static final Text STOCK_A_CAP = Phrase.of("fitting.change-stock-cap");
    private static final Text DO_WITHOUT_RELAY = Phrase.of("fitting.change-no-relay");

    private static final Comparator<BlockForm> BY_CLEARANCE =
            Comparator.comparingDouble(BlockForm::clearanceMm);

    private final Arranging arranging;
    private final Pick pick;
    private final FittingModel model;
    private final FittingTask task;

    private FittingWords(Arranging arranging, Pick pick) {
        this.arranging = arranging;
        this.pick = pick;
        model = arranging.model();
        task = model.task();
    }

    static List<Text> of(
            Arranging arranging, Pick pick, ArrangementKind asked, KnownReasons reasons) {
        return new FittingWords(arranging, pick).list(asked, reasons);
    }

    /** What can be said to those who may not see prices. */
    static List<Text> withoutPrices(List<Text> words) {
        return words.stream()
                .map(FittingWords::withoutCost)
                .filter(text -> !text.namesPrice())
                .toList();
    }

    private static Text withoutCost(Text text) {
        return text instanceof Phrase phrase && phrase.key().equals(WHAT)
                ? new Phrase("fitting.what-unpriced", phrase.values().subList(0, SLOTS_BEFORE_COST))
                : text;
    }

    private List<Text> list(ArrangementKind asked, KnownReasons reasons) {
        List<Text> words = new ArrayList<>();
        Arrangement picked = pick.arranged().arrangement();
        if (!picked.blocks().isEmpty()) {
            words.add(what(picked, pick.arranged().byPieceMicros()));
        }
        if (pick.arranged().savedMicros() > 0) {
            words.add(
                    Phrase.of(
                            "fitting.bags-save",
                            money(pick.arranged().savedMicros()),
                            money(picked.costMicros())));
        }
        if (pick.kind() == ArrangementKind.CHEAPEST && arranging.lostByPieceMicros() > 0) {
            words.add(cheaperByPiece());
        }
        if (asked != pick.kind()) {
            words.add(NOT_OF_ONE_TYPE);
        } else if (asked != ArrangementKind.CHEAPEST) {
            words.add(difference(asked));
        }
        List<Rejected> rejected = reasons.list(arranging.cheapestByPiece());
        for (Rejected each : rejected.subList(0, Math.min(MOST_REJECTED, rejected.size()))) {
            words.add(rejection(each));
        }
        for (FittingItem item : task.items()) {
            if (picked.unplaced().contains(item.id())) {
                words.add(smallestChange(item));
            }
        }
        return words;
    }

    private Text cheaperByPiece() {
        Arrangement byPiece = arranging.cheapestByPiece().arrangement();
        return Phrase.of(
                "fitting.cheaper-by-piece",
                listed(forms(byPiece)),
                money(byPiece.costMicros()),
                money(arranging.lostByPieceMicros()));
    }

    private static Map<BlockForm, Integer> forms(Arrangement arrangement) {
        Map<BlockForm, Integer> forms = new LinkedHashMap<>();
        for (PlacedBlock block : arrangement.blocks()) {
            forms.merge(block.form(), 1, Integer::sum);
        }
        return forms;
    }

    private Text what(Arrangement arrangement, long byPieceMicros) {
        int positions = 0;
        int pairs = 0;
        for (PlacedBlock block : arrangement.blocks()) {
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
        Text room = Phrase.counted("fitting.positions", positions);
        Text held = Phrase.counted("fitting.devices", devices);
        return Phrase.of(
                WHAT,
                listed(forms(arrangement)),
                pairs > 0
                        ? Phrase.of(
                                "fitting.room-with-pairs",
                                room,
                                Phrase.counted("fitting.with-pairs", pairs))
                        : room,
                relays > 0
                        ? Phrase.of(
                                "fitting.devices-and-relays",
                                held,
                                Phrase.counted("fitting.relays", relays))
                        : held,
                free > 0 ? Phrase.of("fitting.free", free) : NONE_FREE,
                money(byPieceMicros));
    }

    private Text difference(ArrangementKind asked) {
        long more =
                pick.arranged().arrangement().costMicros()
                        - arranging.cheapest().arrangement().costMicros();
        Text kind = Phrase.of("fitting.picked-for." + asked.code());
        return more == 0
                ? Phrase.of("fitting.picked-same-cost", kind)
                : Phrase.of("fitting.picked-dearer", kind, money(more));
    }

    private Text rejection(Rejected rejected) {
        Text set = listed(rejected.blocks());
        Text cost = money(rejected.costMicros());
        return switch (rejected.rule()) {
            case SPARE_POSITIONS ->
                    Phrase.counted("fitting.without-spare", task.sparePositions(), set, cost);
            case LOCATIONS -> Phrase.of("fitting.at-one-location", set, cost);
            case FIXED_PLACES -> Phrase.of("fitting.without-fixed-places", set, cost);
            default -> Phrase.of("fitting.would-cost", set, cost, reason(rejected));
        };
    }

    private Text reason(Rejected rejected) {
        return switch (rejected.rule()) {
            case RELAY_PAIR -> relayReason(rejected.blocks());
            case CAP_CLEARANCE -> capReason(rejected.blocks());
            case POSITION_CURRENT -> positionReason(rejected.blocks());
            case BLOCK_CURRENT -> currentReason(rejected.blocks());
            default -> NOT_ALL_RULES;
        };
    }

    private Text relayReason(Map<BlockForm, Integer> blocks) {
        Set<String> without = new LinkedHashSet<>();
        int pairs = 0;
        for (Map.Entry<BlockForm, Integer> form : blocks.entrySet()) {
            if (form.getKey().relayPairStarts().isEmpty()) {
                without.add(form.getKey().block());
            }
            pairs += form.getValue() * form.getKey().relayPairStarts().size();
        }
        int relays = 0;
        for (FittingItem item : task.items()) {
            relays += item.width() == Width.RELAY_PAIR ? 1 : 0;
        }
        return without.isEmpty()
                ? Phrase.counted("fitting.pairs-not-free", relays, pairs)
                : Phrase.counted("fitting.pairs-lacking", relays, takesNoRelay(without));
    }

    private static Text takesNoRelay(Set<String> blocks) {
        Text named =
                blocks.stream()
                        .map(Text::verbatim)
                        .reduce((all, last) -> Phrase.of("fitting.blocks-and", all, last))
                        .orElseThrow();
        return Phrase.counted("fitting.takes-none", blocks.size(), named);
    }

    private Text capReason(Map<BlockForm, Integer> blocks) {
        BlockForm lowest = Collections.min(blocks.keySet(), BY_CLEARANCE);
        int tooTall = 0;
        double tallest = 0;
        for (FittingItem item : task.items()) {
            tooTall += item.heightMm() > lowest.clearanceMm() ? 1 : 0;
            tallest = Math.max(tallest, item.heightMm());
        }
        return Phrase.counted(
                "fitting.cap-too-low",
                tooTall,
                lowest.cap(),
                millimetres(lowest.clearanceMm()),
                millimetres(tallest));
    }

    private Text positionReason(Map<BlockForm, Integer> blocks) {
        BlockForm weakest =
                blocks.keySet().stream()
                        .min(Comparator.comparingDouble(FittingWords::mostForOne))
                        .orElseThrow();
        FittingItem strongest =
                task.items().stream()
                        .max(Comparator.comparingDouble(FittingItem::currentA))
                        .orElseThrow();
        return Phrase.of(
                strongest.width() == Width.RELAY_PAIR
                        ? "fitting.position-current-relay"
                        : "fitting.position-current-device",
                weakest.block(),
                amperes(mostForOne(weakest)),
                circuitOf(strongest),
                amperes(strongest.currentA()));
    }

    private static double mostForOne(BlockForm form) {
        return Math.min(form.maxPositionA(), form.maxTotalA());
    }

    private Text currentReason(Map<BlockForm, Integer> blocks) {
        double limitA = 0;
        for (Map.Entry<BlockForm, Integer> form : blocks.entrySet()) {
            limitA += form.getValue() * form.getKey().maxTotalA();
        }
        double broughtA = task.items().stream().mapToDouble(FittingItem::currentA).sum();
        return broughtA > limitA
                ? Phrase.of("fitting.current-beyond-all", amperes(limitA), amperes(broughtA))
                : CURRENT_BEYOND_ONE;
    }

    /** What one change would let the part in; of several the one that changes least is first. */
    private Text smallestChange(FittingItem item) {
        boolean relay = item.width() == Width.RELAY_PAIR;
        String circuit = circuitOf(item);
        Text start =
                relay
                        ? Phrase.of("fitting.relay-fits-none", circuit)
                        : Phrase.of("fitting.device-fits-none", circuit);
        List<BlockForm> wide =
                task.forms().stream()
                        .filter(form -> !relay || !form.relayPairStarts().isEmpty())
                        .toList();
        if (wide.isEmpty()) {
            return Text.sentences(List.of(start, relay ? STOCK_A_PAIR : STOCK_A_CAP));
        }
        Optional<BlockForm> lowByCap =
                wide.stream().filter(form -> mostForOne(form) >= item.currentA()).max(BY_CLEARANCE);
        if (lowByCap.isPresent()) {
            BlockForm form = lowByCap.get();
            Text higher =
                    Phrase.of(
                            "fitting.change-cap",
                            form.block(),
                            millimetres(item.heightMm()),
                            form.cap(),
                            millimetres(form.clearanceMm()));
            return Text.sentences(
                    relay ? List.of(start, higher, DO_WITHOUT_RELAY) : List.of(start, higher));
        }
        double mostA = wide.stream().mapToDouble(FittingWords::mostForOne).max().orElseThrow();
        double parts = Math.ceil(item.currentA() / mostA);
        return Text.sentences(
                List.of(
                        start,
                        Phrase.of(
                                "fitting.change-circuits",
                                amperes(item.currentA()),
                                (long) parts,
                                amperes(mostA))));
    }

    private static String circuitOf(FittingItem item) {
        return item.id().substring(0, item.id().lastIndexOf('/'));
    }

    private static Text listed(Map<BlockForm, Integer> forms) {
        List<Text> listed = new ArrayList<>(forms.size());
        forms.forEach(
                (form, count) ->
                        listed.add(Phrase.of("fitting.blocks", count, form.block(), form.cap())));
        return Text.listed(listed);
    }

    private static Text amperes(double currentA) {
        return new Amount(currentA, Unit.AMPERE, 2);
    }

    private static Text millimetres(double lengthMm) {
        return new Amount(lengthMm, Unit.MILLIMETRE, 2);
    }

    private Text money(long micros) {
        return new Price(
                model.money(micros).rounded(2, RoundingMode.HALF_UP).getAmount().setScale(2),
                model.prices().currency().getCode());
    }
}
