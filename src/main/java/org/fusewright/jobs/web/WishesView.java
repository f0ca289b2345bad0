package org.fusewright.jobs.web;

import org.fusewright.core.words.Unit;
import org.fusewright.jobs.load.CustomerText;
import org.fusewright.jobs.load.CustomerText.Phrase;
import org.fusewright.jobs.load.CustomerText.Wish;
import org.fusewright.web.Figures;
import org.fusewright.web.Typed;
import org.fusewright.web.Words;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What was read from a customer's text, as rows to confirm.
 *
 * @param text the text as given
 */
public record WishesView(String text, List<Row> rows, int unread) {
    /**
     * One phrase of the text.
     *
     * @param pieces the phrase, with what was not understood told apart
     * @param wish empty when nothing in it asks for a circuit
     */
    public record Row(int number, List<Piece> pieces, Optional<Fields> wish) {}

    /** A part of a phrase as written. */
    public record Piece(String text, boolean understood) {}

    /** The fields of a row, as texts; empty where nothing was said. */
    public record Fields(
            boolean take,
            String title,
            String kind,
            String count,
            String amount,
            String unit,
            String ratedV,
            String runM,
            String terminal,
            boolean momentary,
            boolean relay,
            String returnPath,
            String colour,
            String ratingA,
            String gauge,
            List<String> remarks) {}

    public WishesView {
        rows = List.copyOf(rows);
    }

    static WishesView of(String text) {
        CustomerText read = CustomerText.read(text);
        List<Row> rows = new ArrayList<>();
        for (Phrase phrase : read.phrases()) {
            List<Piece> pieces =
                    phrase.pieces().stream()
                            .map(piece -> new Piece(piece.text(), piece.understood()))
                            .toList();
            rows.add(new Row(rows.size(), pieces, phrase.wish().map(WishesView::fields)));
        }
        return new WishesView(text, rows, read.unread());
    }

    private static Fields fields(Wish wish) {
        boolean known = wish.amps().isPresent() || wish.watts().isPresent();
        List<String> remarks = new ArrayList<>();
        if (!known) {
            remarks.add(Words.say("wishes.no-amount"));
        }
        if (!wish.kindSaid()) {
            remarks.add(Words.say("wishes.kind-guessed"));
        }
        if (wish.runM().isEmpty()) {
            remarks.add(Words.say("wishes.no-length"));
        }
        return new Fields(
                known,
                wish.title(),
                wish.kind().code(),
                wish.count() == 1 ? "" : String.valueOf(wish.count()),
                wish.amps().isPresent() ? number(wish.amps()) : number(wish.watts()),
                wish.amps().isPresent() ? "A" : "W",
                number(wish.ratedV()),
                wish.runM().isPresent()
                        ? Typed.shown(BigDecimal.valueOf(wish.runM().getAsDouble()), Unit.METRE)
                        : "",
                wish.terminal(),
                wish.momentary(),
                wish.relay(),
                wish.returnPath(),
                wish.colour(),
                number(wish.ratingA()),
                wish.gauge(),
                remarks);
    }

    private static String number(OptionalDouble value) {
        return value.isPresent() ? Figures.plain(value.getAsDouble(), 3) : "";
    }

    /** How many rows ask for a circuit. */
    public long found() {
        return rows.stream().filter(row -> row.wish().isPresent()).count();
    }
}
