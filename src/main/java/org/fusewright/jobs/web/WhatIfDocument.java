package org.fusewright.jobs.web;

import org.fusewright.core.sizing.WhatIf.Answer;
import org.fusewright.core.sizing.WhatIf.Point;
import org.fusewright.core.words.UnitSystem;

import java.math.BigDecimal;

/** Writes what becomes of a design as its JSON document, with figures as in a kit's document. */
final class WhatIfDocument extends JsonDocument {
    private static final int USUAL_BYTES = 16 * 1024;

    private final Answer answer;

    private WhatIfDocument(Answer answer) {
        super(new JsonBytes(USUAL_BYTES));
        this.answer = answer;
    }

    /** The document in UTF-8. */
    static byte[] print(Answer answer) {
        WhatIfDocument document = new WhatIfDocument(answer);
        document.write();
        return document.toBytes();
    }

    private void write() {
        json.startObject();
        text("circuit", answer.circuit());
        word("vary", answer.varied().code());
        word("unit", answer.varied().unit().sign(UnitSystem.METRIC));
        value("designed", answer.designed());
        answer.unchangedTo().ifPresent(value -> number("unchangedTo", value));
        answer.standsTo().ifPresent(value -> number("standsTo", value));
        list("points", answer.points(), this::point);
        json.endObject();
    }

    private void point(Point point) {
        value("value", point.value());
        text("says", point.says());
        word("verdict", point.verdict().code());
        flag("worse", point.worse());
        object("nearest");
        check(point.nearest());
        json.endObject();
        list("notPassed", point.notPassed(), this::check);
    }

    /** A number where values are numbers, else a text. */
    private void value(String name, String value) {
        if (answer.varied().isNumber()) {
            decimal(name, new BigDecimal(value));
        } else {
            text(name, value);
        }
    }
}
