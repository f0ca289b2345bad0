package org.fusewright.web;

import gg.jte.Content;
import gg.jte.TemplateOutput;
import gg.jte.html.OwaspHtmlTemplateOutput;
import gg.jte.output.Utf8ByteOutput;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.Base64;
import java.util.Set;
import java.util.StringJoiner;

/**
 * The parts of a page that a browser holds, by digests of what they say, so that an answer sends
 * only what differs. The page keeps the digests and sends them with each change; nothing is
 * remembered here. A part's text names it, so that two parts never have the same digest.
 */
public final class HeldParts {
    /** 48 bits: one part in about 10^11 could be taken for one of a thousand others. */
    private static final int DIGEST_BYTES = 6;

    private final Set<String> held;
    private final StringJoiner printed = new StringJoiner(" ");

    private HeldParts(Set<String> held) {
        this.held = held;
    }

    public static HeldParts none() {
        return of("");
    }

    public static HeldParts of(String digests) {
        return new HeldParts(Set.copyOf(Arrays.asList(digests.split(" "))));
    }

    /** A part, or where it is held what keeps its place. */
    public Content or(Content place, Content part) {
        return page -> print(place, part, page);
    }

    /** The digests of all parts that were printed so far, held or not. */
    public String printed() {
        return printed.toString();
    }

    private void print(Content place, Content part, TemplateOutput page) {
        Utf8ByteOutput text = new Utf8ByteOutput();
        part.writeTo(new OwaspHtmlTemplateOutput(text));
        byte[] bytes = text.toByteArray();
        String digest = digest(bytes);
        printed.add(digest);
        if (held.contains(digest)) {
            place.writeTo(page);
        } else {
            page.writeBinaryContent(bytes);
        }
    }

    private static String digest(byte[] text) {
        try {
            byte[] whole = MessageDigest.getInstance("SHA-256").digest(text);
            return Base64.getUrlEncoder().encodeToString(Arrays.copyOf(whole, DIGEST_BYTES));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e); // every Java has it
        }
    }
}
