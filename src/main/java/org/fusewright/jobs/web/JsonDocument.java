package org.fusewright.jobs.web;

import org.fusewright.core.check.Check;
import org.fusewright.core.words.Text;

import java.math.BigDecimal;
import java.util.List;
import java.util.function.Consumer;

/** A JSON document of named fields; what several documents say alike, they say here. */
abstract class JsonDocument {
    final JsonBytes json;

    JsonDocument(JsonBytes json) {
        this.json = json;
    }

    final byte[] toBytes() {
        return json.toBytes();
    }

    final void check(Check check) {
        word("code", check.code().code());
        text("subject", check.subject().text());
        number("value", check.value());
        number("limit", check.limit());
        word("unit", check.unit());
        number("margin", check.margin());
        word("verdict", check.verdict().code());
        text("says", check.says());
        text("basis", check.basis().text());
    }

    final <T> void list(String name, List<T> values, Consumer<T> fields) {
        json.name(name);
        json.startList();
        for (T value : values) {
            json.startObject();
            fields.accept(value);
            json.endObject();
        }
        json.endList();
    }

    final void object(String name) {
        json.name(name);
        json.startObject();
    }

    /** A text of the program or a part number, never one that a user gave. */
    final void word(String name, String word) {
        json.name(name);
        json.word(word);
    }

    final void text(String name, String value) {
        json.name(name);
        json.text(value);
    }

    /** A text of the program, in English: documents speak one language. */
    final void text(String name, Text text) {
        json.name(name);
        json.text(text);
    }

    /** Texts of the program, in English. */
    final void said(String name, List<? extends Text> texts) {
        json.name(name);
        json.startList();
        for (Text text : texts) {
            json.text(text);
        }
        json.endList();
    }

    /**
     * An id that the job gives, or what is made of such: signs of {@code TextForm.ID}, "/" and
     * spaces.
     */
    final void id(String name, String id) {
        json.name(name);
        json.word(id);
    }

    final void ids(String name, List<String> ids) {
        json.name(name);
        json.startList();
        for (String id : ids) {
            json.word(id);
        }
        json.endList();
    }

    final void flag(String name, boolean flag) {
        json.name(name);
        json.flag(flag);
    }

    final void whole(String name, long value) {
        json.name(name);
        json.whole(value);
    }

    final void number(String name, double value) {
        json.name(name);
        json.number(value);
    }

    final void decimal(String name, BigDecimal value) {
        json.name(name);
        json.decimal(value);
    }
}
