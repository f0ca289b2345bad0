package org.fusewright.core.kit;

import org.fusewright.core.catalog.Relay;
import org.fusewright.core.fitting.Arrangement;
import org.fusewright.core.fitting.FittingItem;
import org.fusewright.core.fitting.KnownReasons;
import org.fusewright.core.fitting.Place;
import org.fusewright.core.fitting.Width;
import org.fusewright.core.job.ArrangementKind;
import org.fusewright.core.kit.Arranging.Pick;
import org.fusewright.core.kit.Kit.Move;
import org.fusewright.core.words.Text;

import java.util.ArrayList;
import java.util.List;

/** What is told of how the blocks were found. */
final class KitFit {

    private KitFit() {}

    static Kit.Fit of(Arranging arranging, Pick pick, ArrangementKind asked, KnownReasons reasons) {
        Arrangement picked = pick.arranged().arrangement();
        Arrangement cheapest = arranging.cheapest().arrangement();
        FittingModel model = arranging.model();
        return new Kit.Fit(
                model.money(picked.costMicros()),
                model.money(Math.max(picked.lowerBoundMicros(), cheapest.lowerBoundMicros())),
                picked.optimal(),
                pick.kind(),
                FittingWords.of(arranging, pick, asked, reasons),
                moves(model, picked, pick.arranged().blocks()));
    }

    private static List<Move> moves(
            FittingModel model, Arrangement arrangement, List<KitBlock> blocks) {
        List<Move> moves = new ArrayList<>();
        for (FittingItem item : model.task().items()) {
            if (arrangement.moved().contains(item.id())) {
                int cut = item.id().lastIndexOf('/');
                String circuit = item.id().substring(0, cut);
                boolean relay = item.width() == Width.RELAY_PAIR;
                moves.add(
                        new Move(
                                circuit,
                                relay,
                                nameOf(item.place().orElseThrow()),
                                placeOf(circuit, relay, blocks)));
            }
        }
        return moves;
    }

    static String nameOf(Place place) {
        return place.block()
                + (place.firstPosition().isPresent() ? "-" + place.firstPosition().getAsInt() : "");
    }

    static Text placeOf(String circuit, boolean relay, List<KitBlock> blocks) {
        for (KitBlock block : blocks) {
            for (KitBlock.Seat seat : block.seats()) {
                if (seat.circuit().equals(circuit) && seat.part() instanceof Relay == relay) {
                    return Text.verbatim(block.id() + "-" + seat.positions().getFirst());
                }
            }
        }
        return Move.NOWHERE;
    }
}
