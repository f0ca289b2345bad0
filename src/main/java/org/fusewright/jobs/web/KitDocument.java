package org.fusewright.jobs.web;

import org.fusewright.core.catalog.BaggedSet;
import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Holder;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.Plug;
import org.fusewright.core.catalog.Relay;
import org.fusewright.core.catalog.Wedge;
import org.fusewright.core.check.Check;
import org.fusewright.core.kit.Cavity;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitBlock;
import org.fusewright.core.kit.KitCircuit;
import org.fusewright.core.kit.KitFeed;
import org.fusewright.core.kit.KitLead;
import org.fusewright.core.kit.PartLine;
import org.fusewright.core.kit.WireLine;
import org.fusewright.core.sizing.Lead;
import org.fusewright.core.sizing.RemainingVoltage;
import org.fusewright.core.sizing.SizedCircuit;
import org.fusewright.core.sizing.SizedLoad;
import org.fusewright.core.sizing.SizedSplice;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;

import tools.jackson.core.JsonGenerator;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.core.io.SerializedString;
import tools.jackson.core.util.ByteArrayBuilder;
import tools.jackson.databind.json.JsonMapper;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Consumer;

/**
 * Writes a kit as its JSON document: always the same bytes for the same kit. Figures are rounded to
 * four decimals, lengths are whole millimetres, money keeps its decimals; what is absent is left
 * out.
 */
public final class KitDocument {
    private static final JsonMapper MAPPER =
            JsonMapper.builder().enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN).build();
    private static final int USUAL_BYTES = 64 * 1024;
    private static final int DECIMALS = 4;
    private static final long ROUNDING = 10_000;

    /**
     * Names of fields and the words that stand under them, escaped once: a kit has thousands. Only
     * texts of the program itself come here, so that the map stays small.
     */
    private static final Map<String, SerializedString> WORDS = new ConcurrentHashMap<>();

    private final JsonGenerator json;
    private final char[] digits = new char[24];

    private KitDocument(JsonGenerator json) {
        this.json = json;
    }

    /** The document in UTF-8. */
    public static byte[] print(Kit kit) {
        try (ByteArrayBuilder bytes = new ByteArrayBuilder(USUAL_BYTES)) {
            try (JsonGenerator json = MAPPER.createGenerator(bytes)) {
                new KitDocument(json).write(kit);
            }
            return bytes.toByteArray();
        }
    }

    private void write(Kit kit) {
        json.writeStartObject();
        text("reference", kit.job().reference());
        text("title", kit.job().title());
        json.writeBooleanProperty("buildable", kit.isBuildable());
        text("catalogVersion", kit.catalogVersion());
        text("fingerprint", kit.fingerprint());
        list("circuits", kit.circuits(), this::circuit);
        list("feeds", kit.feeds(), this::feed);
        list("blocks", kit.blocks(), this::block);
        json.writeObjectPropertyStart("fit");
        money("cost", kit.fit().cost());
        money("lowerBound", kit.fit().lowerBound());
        json.writeBooleanProperty("optimal", kit.fit().optimal());
        json.writeEndObject();
        list("checks", kit.checks(), this::check);
        list("parts", kit.parts(), this::part);
        list("wire", kit.wire(), this::wire);
        json.writeObjectPropertyStart("totals");
        decimal("parts", kit.totals().parts().getAmount());
        number("massG", kit.totals().massG());
        text("currency", kit.totals().parts().getCurrencyUnit().getCode());
        json.writeEndObject();
        json.writeEndObject();
    }

    private void circuit(KitCircuit circuit) {
        SizedCircuit sized = circuit.sized();
        text("id", sized.id());
        text("title", sized.resolved().circuit().title());
        number("runningA", sized.runningA());
        number("carriedA", sized.carriedA());
        number("inrushA", sized.inrushA());
        sized.device().ifPresent(device -> device("device", device));
        sized.resolved().circuit().contactFrom().ifPresent(from -> text("contactFrom", from));
        texts("why", sized.why());
        list("leads", circuit.leads(), this::lead);
        list("splices", sized.splices(), this::splice);
        list("loads", sized.loads(), this::load);
    }

    private void feed(KitFeed feed) {
        text("id", feed.sized().id());
        number("runningA", feed.sized().runningA());
        number("connectedA", feed.sized().connectedA());
        feed.sized().remains().ifPresent(this::remains);
        feed.sized().mainDevice().ifPresent(device -> device("device", device));
        feed.sized().holder().map(Holder::number).ifPresent(n -> text("holder", n.value()));
        texts("why", feed.sized().why());
        list("leads", feed.leads(), this::lead);
        list("splices", feed.sized().splices(), this::splice);
    }

    private void remains(RemainingVoltage left) {
        json.writeObjectPropertyStart("remains");
        number("batteryV", left.batteryV());
        number("busV", left.busV());
        number("busAtStartV", left.busAtStartV());
        json.writeEndObject();
    }

    private void device(String name, Device device) {
        json.writeObjectPropertyStart(name);
        text("part", device.number().value());
        word("kind", device.kind().code());
        number("ratingA", device.ratingA());
        json.writeEndObject();
    }

    private void lead(KitLead kitLead) {
        Lead lead = kitLead.lead();
        text("id", lead.id());
        word("role", lead.role().code());
        text("part", lead.wire().number().value());
        text("size", lead.wire().size().label());
        number("areaMm2", lead.wire().copperMm2());
        text("colour", lead.wire().colour().code());
        number("routeM", lead.routeM());
        number("cutM", lead.cut().metres());
        number("currentA", lead.currentA());
        number("dropV", lead.dropV());
        text("from", kitLead.from());
        text("to", kitLead.to());
    }

    private void splice(SizedSplice splice) {
        text("id", splice.id());
        text("part", splice.part().number().value());
        json.writeNumberProperty("leads", splice.leads());
    }

    private void load(SizedLoad load) {
        text("title", load.title());
        number("runningA", load.runningA());
        number("dropV", load.dropV());
        number("dropPercent", load.dropPercent());
    }

    private void block(KitBlock block) {
        text("id", block.id());
        text("location", block.location());
        text("part", block.block().number().value());
        text("cap", block.cap().number().value());
        block.wedge().map(Wedge::number).ifPresent(number -> text("wedge", number.value()));
        json.writeNumberProperty("positions", block.block().positions());
        list("holds", block.seats(), this::seat);
        list("cavities", block.cavities(), this::cavity);
    }

    private void seat(KitBlock.Seat seat) {
        json.writeArrayPropertyStart("positions");
        seat.positions().forEach(json::writeNumber);
        json.writeEndArray();
        text("circuit", seat.circuit());
        text(seat.part() instanceof Relay ? "relay" : "device", seat.part().number().value());
    }

    private void cavity(Cavity cavity) {
        text("id", cavity.id());
        cavity.occupant().ifPresent(this::occupant);
        cavity.plug().map(Plug::number).ifPresent(number -> text("plug", number.value()));
    }

    private void occupant(Cavity.Occupant occupant) {
        word("terminalRole", occupant.role().code());
        text("lead", occupant.lead().id());
        occupant.terminal().ifPresent(terminal -> text("terminal", terminal.number().value()));
        occupant.seal().ifPresent(seal -> text("seal", seal.number().value()));
    }

    private void check(Check check) {
        word("code", check.code().code());
        text("subject", check.subject().text());
        number("value", check.value());
        number("limit", check.limit());
        word("unit", check.unit());
        number("margin", check.margin());
        word("verdict", check.verdict().code());
        text("says", check.says());
        word("basis", check.basis().text());
    }

    private void part(PartLine line) {
        Part part = line.part();
        text("part", part.number().value());
        text("title", part.title());
        word("group", line.group().code());
        decimal("quantity", plain(line.quantity()));
        word("unit", line.unit());
        texts("usedAt", line.usedAt());
        money("unitPrice", line.unitPrice());
        decimal("extended", line.extended().getAmount());
        number("massG", line.massG());
        if (part instanceof BaggedSet) {
            list("contains", line.contains(), this::content);
            list("surplus", line.surplus(), this::content);
        }
    }

    private void content(BaggedSet.Content content) {
        text("part", content.part().value());
        json.writeNumberProperty("quantity", content.quantity());
    }

    private void wire(WireLine line) {
        text("part", line.wire().number().value());
        text("family", line.wire().family());
        text("size", line.wire().size().label());
        text("colour", line.wire().colour().code());
        json.writeNumberProperty("cuts", line.leads().size());
        number("totalM", line.total().metres());
        texts("leads", line.leads().stream().map(lead -> lead.lead().id()).toList());
    }

    private <T> void list(String name, List<T> values, Consumer<T> fields) {
        name(name);
        json.writeStartArray();
        for (T value : values) {
            json.writeStartObject();
            fields.accept(value);
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static SerializedString known(String word) {
        SerializedString known = WORDS.get(word);
        return known != null ? known : WORDS.computeIfAbsent(word, SerializedString::new);
    }

    private void name(String name) {
        json.writeName(known(name));
    }

    /** A text of the program: a code, a unit, a basis; never one that a user gave. */
    private void word(String name, String word) {
        name(name);
        json.writeString(known(word));
    }

    private void text(String name, String value) {
        name(name);
        json.writeString(value);
    }

    private void texts(String name, List<String> values) {
        name(name);
        json.writeStartArray();
        values.forEach(json::writeString);
        json.writeEndArray();
    }

    /** Whole numbers stand without a decimal point, and none with an exponent. */
    private void number(String name, double value) {
        name(name);
        long scaled = Math.round(value * ROUNDING);
        if (scaled % ROUNDING == 0) {
            json.writeNumber(scaled / ROUNDING);
        } else {
            decimal(scaled);
        }
    }

    /**
     * Some ten times faster than printing a double, of which a kit has over a thousand: the digits
     * from the last to the first, without the zeros at the end.
     */
    private void decimal(long scaled) {
        long left = Math.abs(scaled);
        int places = DECIMALS;
        while (left % 10 == 0) {
            left /= 10;
            places--;
        }
        int start = digits.length;
        while (left > 0 || places >= 0) {
            if (places-- == 0) {
                digits[--start] = '.';
            }
            digits[--start] = (char) ('0' + left % 10);
            left /= 10;
        }
        if (scaled < 0) {
            digits[--start] = '-';
        }
        json.writeNumber(digits, start, digits.length - start);
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

    private void decimal(String name, BigDecimal value) {
        json.writeNumberProperty(name, value);
    }

    private static BigDecimal plain(BigDecimal value) {
        BigDecimal stripped = value.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }
}
