package org.fusewright.core.words;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A text of the bundle, taken apart: literal text, and between two pieces of it the number of the
 * value that goes there.
 */
final class Template {
    private static final Pattern SLOT = Pattern.compile("\\{(\\d)\\}");

    private final Literal[] literals;
    private final int[] slots;

    private Template(Literal[] literals, int[] slots) {
        this.literals = literals;
        this.slots = slots;
    }

    static Template parse(String text) {
        List<Literal> literals = new ArrayList<>();
        List<Integer> slots = new ArrayList<>();
        Matcher slot = SLOT.matcher(text);
        int end = 0;
        while (slot.find()) {
            literals.add(new Literal(text.substring(end, slot.start())));
            slots.add(Integer.parseInt(slot.group(1)));
            end = slot.end();
        }
        literals.add(new Literal(text.substring(end)));
        return new Template(
                literals.toArray(Literal[]::new),
                slots.stream().mapToInt(Integer::intValue).toArray());
    }

    boolean isPlain() {
        return slots.length == 0;
    }

    String plain() {
        return literals[0].toString();
    }

    /** How many pieces of literal text there are; a slot stands between any two of them. */
    int pieces() {
        return literals.length;
    }

    Literal literal(int piece) {
        return literals[piece];
    }

    /** The number of the value that follows a piece. */
    int slotAfter(int piece) {
        return slots[piece];
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder(literals[0].toString());
        for (int i = 0; i < slots.length; i++) {
            text.append('{').append(slots[i]).append('}').append(literals[i + 1]);
        }
        return text.toString();
    }
}
