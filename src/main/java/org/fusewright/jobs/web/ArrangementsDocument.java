package org.fusewright.jobs.web;

import org.fusewright.core.catalog.Relay;
import org.fusewright.core.job.ArrangementKind;
import org.fusewright.core.kit.ArrangementOffer;
import org.fusewright.core.kit.KitBlock;

import java.util.List;

/** Writes the arrangements to pick from as a JSON document, with figures as in a kit's document. */
final class ArrangementsDocument extends JsonDocument {
    private static final int USUAL_BYTES = 16 * 1024;

    private ArrangementsDocument() {
        super(new JsonBytes(USUAL_BYTES));
    }

    /** The document in UTF-8. */
    static byte[] print(List<ArrangementOffer> offers) {
        ArrangementsDocument document = new ArrangementsDocument();
        document.json.startObject();
        document.list("arrangements", offers, document::offer);
        document.json.endObject();
        return document.toBytes();
    }

    private void offer(ArrangementOffer offer) {
        word("arrangement", offer.kind().code());
        json.name("bestIn");
        json.startList();
        for (ArrangementKind kind : offer.kinds()) {
            json.word(kind.code());
        }
        json.endList();
        flag("picked", offer.picked());
        if (offer.priced()) {
            decimal("cost", offer.cost().getAmount());
            word("currency", offer.cost().getCurrencyUnit().getCode());
        }
        flag("optimal", offer.optimal());
        whole("free", offer.free());
        number("busiestA", offer.busiestA());
        list("blocks", offer.blocks(), this::block);
    }

    private void block(KitBlock block) {
        text("id", block.id());
        text("location", block.location());
        word("part", block.block().number().value());
        word("cap", block.cap().number().value());
        whole("positions", block.block().positions());
        list("holds", block.seats(), this::seat);
    }

    private void seat(KitBlock.Seat seat) {
        whole("position", seat.positions().getFirst());
        text("circuit", seat.circuit());
        word("what", seat.part() instanceof Relay ? "relay" : "device");
    }
}
