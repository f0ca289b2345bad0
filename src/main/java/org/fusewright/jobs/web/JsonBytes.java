package org.fusewright.jobs.web;

import org.fusewright.core.quantity.Digits;
import org.fusewright.core.quantity.Figures;
import org.fusewright.core.words.Literal;
import org.fusewright.core.words.Text;
import org.fusewright.core.words.TextSink;
import org.fusewright.core.words.Wording;
import org.jspecify.annotations.Nullable;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Objects;

/**
 * A JSON document being written, straight into UTF-8: for answers of thousands of short fields,
 * where a general generator spends more time on its bookkeeping than on the text. Whoever writes
 * sees to it that names, values and ends come in an order that makes a document.
 */
final class JsonBytes implements TextSink {
    /** The ASCII signs that stand for themselves in a text. */
    private static final boolean[] PLAIN = new boolean[0x80];

    static {
        for (int sign = ' '; sign < PLAIN.length; sign++) {
            PLAIN[sign] = sign != '"' && sign != '\\';
        }
    }

    /** As much as the server sends at once. */
    private static final int PIECE_BYTES = 32 * 1024;

    private static final int DECIMALS = 4;
    private static final long ROUNDING = 10_000;

    /** Of one sign, such as \\u001F. */
    private static final int MOST_ESCAPED = 6;

    /** With so many decimals even the least number's usual form has no exponent. */
    private static final int MOST_PLAIN_DECIMALS = 6;

    private final @Nullable OutputStream receiver;
    private byte[] bytes;
    private int size;

    /** Keeps the whole document. */
    JsonBytes(int usualSize) {
        this.receiver = null;
        this.bytes = new byte[usualSize];
    }

    /** Sends the document on piece by piece. */
    JsonBytes(OutputStream receiver) {
        this.receiver = receiver;
        this.bytes = new byte[PIECE_BYTES + PIECE_BYTES / 4];
    }

    void startObject() {
        sign('{');
    }

    void endObject() {
        end('}');
    }

    void startList() {
        sign('[');
    }

    void endList() {
        end(']');
    }

    /** The name of a field: a word of the program. */
    void name(String name) {
        makeRoom(name.length() + 3);
        bytes[size++] = '"';
        copyAscii(name);
        bytes[size++] = '"';
        bytes[size++] = ':';
    }

    /** ASCII with nothing in it that JSON escapes: codes, part numbers, words of the program. */
    void word(String word) {
        makeRoom(word.length() + 3);
        bytes[size++] = '"';
        copyAscii(word);
        bytes[size++] = '"';
        bytes[size++] = ',';
    }

    /** Any text. */
    void text(String text) {
        quote();
        given(text);
        endText();
    }

    /** A text of the program, in English: documents speak one language. */
    void text(Text text) {
        quote();
        Wording.ENGLISH.say(text, this);
        endText();
    }

    @Override
    public void literal(Literal literal) {
        if (!literal.isPlain()) {
            given(literal.toString());
            return;
        }
        makeRoom(literal.utf8Length());
        literal.copyTo(bytes, size);
        size += literal.utf8Length();
    }

    @Override
    public void given(String text) {
        int length = text.length();
        makeRoom(length);
        for (int i = 0; i < length; i++) {
            char sign = text.charAt(i);
            if (sign >= PLAIN.length || !PLAIN[sign]) {
                escape(text.substring(i));
                return;
            }
            bytes[size++] = (byte) sign;
        }
    }

    @Override
    public void figure(double value, int decimals, char decimalSign) {
        if (!Figures.isPrinted(value) || decimalSign != '.') {
            given(Figures.of(value, decimals).replace('.', decimalSign));
            return;
        }
        makeRoom(Figures.MOST_SIGNS);
        size = Figures.print(value, decimals, bytes, size);
    }

    private void quote() {
        makeRoom(1);
        bytes[size++] = '"';
    }

    private void endText() {
        makeRoom(2);
        bytes[size++] = '"';
        bytes[size++] = ',';
    }

    void flag(boolean flag) {
        makeRoom(6);
        copyAscii(flag ? "true" : "false");
        bytes[size++] = ',';
    }

    void whole(long number) {
        makeRoom(Figures.MOST_SIGNS + 1);
        if (number < 0) {
            copyAscii(Long.toString(number));
        } else {
            size = Digits.print(number, 0, bytes, size);
        }
        bytes[size++] = ',';
    }

    /** To four decimals, none of them an idle zero, and never with an exponent. */
    void number(double number) {
        long parts = Math.round(number * ROUNDING);
        makeRoom(Figures.MOST_SIGNS + 1);
        if (parts < 0) {
            bytes[size++] = '-';
        }
        size = Digits.print(Math.abs(parts), DECIMALS, bytes, size);
        bytes[size++] = ',';
    }

    /** With all its decimals, and never with an exponent. */
    void decimal(BigDecimal number) {
        // A number knows its usual form once it was asked for it: the catalog's prices do.
        boolean usualIsPlain = number.scale() >= 0 && number.scale() <= MOST_PLAIN_DECIMALS;
        String plain = usualIsPlain ? number.toString() : number.toPlainString();
        makeRoom(plain.length() + 1);
        copyAscii(plain);
        bytes[size++] = ',';
    }

    /** What was written, when every object and list has its end. */
    byte[] toBytes() {
        return Arrays.copyOf(bytes, size - 1);
    }

    /**
     * Sends what was not sent yet, when every object and list has its end.
     *
     * @throws UncheckedIOException as every sending when the receiver does not take it
     */
    void sendRest() {
        send(size - 1);
    }

    private void send(int length) {
        try {
            Objects.requireNonNull(receiver).write(bytes, 0, length);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Each value brings a comma; the end of what it stands in takes the last one's place. */
    private void end(char sign) {
        if (bytes[size - 1] == ',') {
            size--;
        }
        sign(sign);
        sign(',');
        if (receiver != null && size > PIECE_BYTES) {
            // The last comma stays: the next end may take its place.
            send(size - 1);
            bytes[0] = ',';
            size = 1;
        }
    }

    private void sign(char sign) {
        makeRoom(1);
        bytes[size++] = (byte) sign;
    }

    // Deprecated for what it does to other signs; for ASCII it is a plain copy, without a detour.
    @SuppressWarnings("deprecation")
    private void copyAscii(String text) {
        text.getBytes(0, text.length(), bytes, size);
        size += text.length();
    }

    private void escape(String text) {
        byte[] utf8 = text.getBytes(StandardCharsets.UTF_8);
        makeRoom(MOST_ESCAPED * utf8.length);
        for (byte unit : utf8) {
            if (unit < 0 || PLAIN[unit]) {
                bytes[size++] = unit;
            } else {
                copyAscii(escaped(unit));
            }
        }
    }

    private static String escaped(byte unit) {
        return switch (unit) {
            case '"' -> "\\\"";
            case '\\' -> "\\\\";
            case '\n' -> "\\n";
            case '\r' -> "\\r";
            case '\t' -> "\\t";
            default -> "\\u00" + HexFormat.of().withUpperCase().toHexDigits(unit);
        };
    }

    private void makeRoom(int more) {
        if (size + more > bytes.length) {
            bytes = Arrays.copyOf(bytes, Math.max(2 * bytes.length, size + more));
        }
    }
}
