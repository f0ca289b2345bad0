package org.fusewright.papers;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

import java.util.List;

class LetteringTest {

    private static final Lettering BODY = Style.BODY;

    @Test
    void breaksAtSpaces() {
        float width = BODY.width("one two") + 0.1f;
        assertThat(BODY.wrap("one two three", width)).containsExactly("one two", "three");
    }

    @Test
    void breaksAfterJoiningSigns() {
        float width = BODY.width("battery/") + 0.1f;
        assertThat(BODY.wrap("battery/splice", width)).containsExactly("battery/", "splice");
    }

    @Test
    void keepsPartNumbersWhole() {
        float width = BODY.width("take BW-C4T") - 1;
        assertThat(BODY.wrap("take BW-C4T", width)).containsExactly("take", "BW-C4T");
        assertThat(BODY.wrap("take 8\u00A0×\u00A0BW", BODY.width("take 8 ×")))
                .containsExactly("take", "8\u00A0×\u00A0BW");
    }

    @Test
    void keepsADecimalCommaWithinItsFigure() {
        float width = BODY.width("bei 589,8") - 1;
        assertThat(BODY.wrap("bei 589,8 A", width)).containsExactly("bei", "589,8 A");
        assertThat(BODY.wrap("B1,B2", BODY.width("B1,") + 0.1f)).containsExactly("B1,", "B2");
    }

    @Test
    void growsSmallerUntilItFitsOnALine() {
        float room = BODY.width("Hauptsicherung") * 0.8f;
        Lettering smaller = BODY.fitting("Hauptsicherung", room);
        assertThat(smaller.width("Hauptsicherung")).isLessThanOrEqualTo(room);
        assertThat(smaller.size()).isLessThan(BODY.size());
        assertThat(BODY.fitting("Fuse", room)).isEqualTo(BODY);
    }

    @Test
    void breaksALongWordAnywhereAndLosesNothing() {
        String word = "abcdefghijklmnopqrstuvwxyz".repeat(8);
        List<String> lines = BODY.wrap(word, 70);
        assertThat(lines).hasSizeGreaterThan(5);
        assertThat(lines).allSatisfy(line -> assertThat(BODY.width(line)).isLessThan(70));
        assertThat(String.join("", lines)).isEqualTo(word);
    }

    @Test
    void keepsOneSignALineWhereNothingFits() {
        assertThat(BODY.wrap("abc", 0.1f)).containsExactly("a", "b", "c");
    }

    @Test
    void endsInAnEllipsisBeyondTheLastLine() {
        List<String> lines = BODY.wrap("many words ".repeat(20), 80, 2);
        assertThat(lines).hasSize(2);
        assertThat(lines.getLast()).endsWith("…");
        assertThat(BODY.width(lines.getLast())).isLessThanOrEqualTo(80);
    }

    @Test
    void hasOneEmptyLineForNoText() {
        assertThat(BODY.wrap("", 80)).containsExactly("");
        assertThat(BODY.wrap("  ", 80)).containsExactly("");
    }
}
