package org.fusewright.jobs.web;

import org.fusewright.core.catalog.BaggedSet;
import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Holder;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.Plug;
import org.fusewright.core.catalog.Relay;
import org.fusewright.core.catalog.Wedge;
import org.fusewright.core.kit.Cavity;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitBlock;
import org.fusewright.core.kit.KitCircuit;
import org.fusewright.core.kit.KitFeed;
import org.fusewright.core.kit.KitLead;
import org.fusewright.core.kit.PartLine;
import org.fusewright.core.kit.WireLine;
import org.fusewright.core.sizing.DeadShort;
import org.fusewright.core.sizing.Lead;
import org.fusewright.core.sizing.RemainingVoltage;
import org.fusewright.core.sizing.SizedCircuit;
import org.fusewright.core.sizing.SizedLoad;
import org.fusewright.core.sizing.SizedSplice;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;

/**
 * Writes a kit as its JSON document: always the same bytes for the same kit. Figures are rounded to
 * four decimals, lengths are whole millimetres, money keeps its decimals; what is absent is left
 * out, so are the prices of a kit that tells none.
 */
public final class KitDocument extends JsonDocument {
    private static final int USUAL_BYTES = 128 * 1024;

    private KitDocument(JsonBytes json) {
        super(json);
    }

    /** The document in UTF-8. */
    public static byte[] print(Kit kit) {
        KitDocument document = new KitDocument(new JsonBytes(USUAL_BYTES));
        document.write(kit);
        return document.toBytes();
    }

    /**
     * Sends the same bytes while they are written, so that the reader need not wait for the end.
     */
    static void send(Kit kit, OutputStream receiver) throws IOException {
        JsonBytes json = new JsonBytes(receiver);
        try {
            new KitDocument(json).write(kit);
            json.sendRest();
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    private void write(Kit kit) {
        json.startObject();
        text("reference", kit.job().reference());
        text("title", kit.job().title());
        flag("buildable", kit.isBuildable());
        text("catalogVersion", kit.catalogVersion());
        word("fingerprint", kit.fingerprint());
        list("circuits", kit.circuits(), this::circuit);
        list("feeds", kit.feeds(), this::feed);
        list("blocks", kit.blocks(), this::block);
        object("fit");
        if (kit.priced()) {
            money("cost", kit.fit().cost());
            money("lowerBound", kit.fit().lowerBound());
        }
        flag("optimal", kit.fit().optimal());
        word("arrangement", kit.fit().kind().code());
        said("why", kit.fit().why());
        list("moved", kit.fit().moved(), this::move);
        json.endObject();
        list("checks", kit.checks(), this::check);
        list("parts", kit.parts(), line -> part(line, kit.priced()));
        list("wire", kit.wire(), this::wire);
        object("totals");
        if (kit.priced()) {
            decimal("parts", kit.totals().parts().getAmount());
        }
        number("massG", kit.totals().massG());
        word("currency", kit.totals().parts().getCurrencyUnit().getCode());
        json.endObject();
        json.endObject();
    }

    private void circuit(KitCircuit circuit) {
        SizedCircuit sized = circuit.sized();
        id("id", sized.id());
        text("title", sized.resolved().circuit().title());
        number("runningA", sized.runningA());
        number("carriedA", sized.carriedA());
        number("inrushA", sized.inrushA());
        sized.device().ifPresent(device -> device("device", device));
        sized.resolved().circuit().contactFrom().ifPresent(from -> id("contactFrom", from));
        said("why", sized.why());
        list("leads", circuit.leads(), this::lead);
        list("splices", sized.splices(), this::splice);
        list("loads", sized.loads(), this::load);
        sized.study().ifPresent(study -> list("shorts", study.deadShorts(), this::deadShort));
    }

    private void deadShort(DeadShort deadShort) {
        word("at", deadShort.place().code());
        number("prospectiveA", deadShort.prospectiveA());
        deadShort.clearsS().ifPresent(clearsS -> number("clearsS", clearsS));
        number("letThroughA2s", deadShort.letThroughA2s());
        number("survivesA2s", deadShort.survivesA2s());
        number("endC", deadShort.endC());
        id("lead", deadShort.lead());
    }

    private void feed(KitFeed feed) {
        id("id", feed.sized().id());
        number("runningA", feed.sized().runningA());
        number("connectedA", feed.sized().connectedA());
        feed.sized().remains().ifPresent(this::remains);
        feed.sized().mainDevice().ifPresent(device -> device("device", device));
        feed.sized().holder().map(Holder::number).ifPresent(n -> word("holder", n.value()));
        said("why", feed.sized().why());
        list("leads", feed.leads(), this::lead);
        list("splices", feed.sized().splices(), this::splice);
    }

    private void remains(RemainingVoltage left) {
        object("remains");
        number("batteryV", left.batteryV());
        number("busV", left.busV());
        number("busAtStartV", left.busAtStartV());
        json.endObject();
    }

    private void device(String name, Device device) {
        object(name);
        word("part", device.number().value());
        word("kind", device.kind().code());
        number("ratingA", device.ratingA());
        json.endObject();
    }

    private void lead(KitLead kitLead) {
        Lead lead = kitLead.lead();
        id("id", lead.id());
        word("role", lead.role().code());
        word("part", lead.wire().number().value());
        word("size", lead.wire().size().label());
        number("areaMm2", lead.wire().copperMm2());
        word("colour", lead.wire().colour().code());
        number("routeM", lead.routeM());
        number("cutM", lead.cut().metres());
        number("currentA", lead.currentA());
        number("dropV", lead.dropV());
        text("from", kitLead.from());
        text("to", kitLead.to());
    }

    private void splice(SizedSplice splice) {
        id("id", splice.id());
        word("part", splice.part().number().value());
        whole("leads", splice.leads());
    }

    private void load(SizedLoad load) {
        text("title", load.title());
        number("runningA", load.runningA());
        number("dropV", load.dropV());
        number("dropPercent", load.dropPercent());
    }

    private void block(KitBlock block) {
        id("id", block.id());
        text("location", block.location());
        word("part", block.block().number().value());
        word("cap", block.cap().number().value());
        block.wedge().map(Wedge::number).ifPresent(number -> word("wedge", number.value()));
        whole("positions", block.block().positions());
        list("holds", block.seats(), this::seat);
        list("cavities", block.cavities(), this::cavity);
    }

    private void seat(KitBlock.Seat seat) {
        json.name("positions");
        json.startList();
        for (int position : seat.positions()) {
            json.whole(position);
        }
        json.endList();
        id("circuit", seat.circuit());
        word(seat.part() instanceof Relay ? "relay" : "device", seat.part().number().value());
    }

    private void cavity(Cavity cavity) {
        id("id", cavity.id());
        cavity.occupant().ifPresent(this::occupant);
        cavity.plug().map(Plug::number).ifPresent(number -> word("plug", number.value()));
    }

    private void occupant(Cavity.Occupant occupant) {
        word("terminalRole", occupant.role().code());
        id("lead", occupant.lead().id());
        occupant.terminal().ifPresent(terminal -> word("terminal", terminal.number().value()));
        occupant.seal().ifPresent(seal -> word("seal", seal.number().value()));
    }

    private void move(Kit.Move move) {
        id("circuit", move.circuit());
        word("what", move.relay() ? "relay" : "device");
        text("from", move.from());
        text("to", move.to());
    }

    private void part(PartLine line, boolean priced) {
        Part part = line.part();
        word("part", part.number().value());
        text("title", part.title());
        word("group", line.group().code());
        decimal("quantity", plain(line.quantity()));
        word("unit", line.unit());
        ids("usedAt", line.usedAt());
        if (priced) {
            money("unitPrice", line.unitPrice());
            decimal("extended", line.extended().getAmount());
        }
        number("massG", line.massG());
        if (part instanceof BaggedSet) {
            list("contains", line.contains(), this::content);
            list("surplus", line.surplus(), this::content);
        }
    }

    private void content(BaggedSet.Content content) {
        word("part", content.part().value());
        whole("quantity", content.quantity());
    }

    private void wire(WireLine line) {
        word("part", line.wire().number().value());
        text("family", line.wire().family());
        word("size", line.wire().size().label());
        word("colour", line.wire().colour().code());
        whole("cuts", line.leads().size());
        number("totalM", line.total().metres());
        json.name("leads");
        json.startList();
        for (KitLead lead : line.leads()) {
            json.word(lead.lead().id());
        }
        json.endList();
    }

    private void money(String name, BigMoney money) {
        CurrencyUnit currency = money.getCurrencyUnit();
        BigDecimal amount = money.getAmount();
        decimal(
                name,
                amount.scale() < currency.getDecimalPlaces()
                        ? amount.setScale(currency.getDecimalPlaces())
                        : amount);
    }

    private static BigDecimal plain(BigDecimal value) {
        if (value.scale() == 0) {
            return value;
        }
        BigDecimal stripped = value.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }
}
