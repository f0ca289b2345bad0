package org.fusewright.papers;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import org.fusewright.papers.FittedText.Passage;
import org.junit.jupiter.api.Test;

import java.util.List;

class FittedTextTest {

    private static final float LEADING = 1.24f;

    @Test
    void setsAShortTextAtTheLargestSize() {
        FittedText text = FittedText.fit(List.of(Passage.plain("Pump")), 100, 20, 8, 5);
        assertThat(text.lines())
                .singleElement()
                .satisfies(line -> assertThat(line.lettering().size()).isEqualTo(8));
        assertThat(text.height()).isCloseTo(8 * LEADING, offset(0.01f));
    }

    @Test
    void setsTextSmallerRatherThanBreakAWord() {
        float width = new Lettering(PaperFont.BOLD, 6).width("pump/controller");
        FittedText text =
                FittedText.fit(List.of(Passage.strong("controllercontroller")), width, 40, 8, 3);
        assertThat(text.lines()).hasSize(1);
        assertThat(text.lines().getFirst().lettering().size()).isLessThan(6);
    }

    @Test
    void wrapsBetweenWords() {
        FittedText text =
                FittedText.fit(List.of(Passage.plain("Fuel pump and injectors")), 50, 40, 8, 5);
        assertThat(text.lines().stream().map(Cell.Line::text))
                .containsExactly("Fuel pump", "and", "injectors");
    }

    @Test
    void cutsTheLongestPassageWhenTheSmallestSizeIsTooLarge() {
        FittedText text =
                FittedText.fit(
                        List.of(Passage.strong("B1-2b"), Passage.plain("many words ".repeat(50))),
                        60,
                        3 * 5 * LEADING,
                        8,
                        5);
        assertThat(text.lines()).hasSize(3);
        assertThat(text.lines().getFirst().text()).isEqualTo("B1-2b");
        assertThat(text.lines().getLast().text()).endsWith("…");
    }

    @Test
    void leavesOutWhatIsEmpty() {
        assertThat(
                        FittedText.fit(
                                        List.of(Passage.plain("free"), Passage.plain("")),
                                        50,
                                        40,
                                        8,
                                        5)
                                .lines())
                .hasSize(1);
    }

    @Test
    void leavesOutWhatHasNoRoomAtAll() {
        FittedText text =
                FittedText.fit(
                        List.of(Passage.plain("one"), Passage.plain("two"), Passage.plain("three")),
                        50,
                        7,
                        8,
                        5);
        assertThat(text.lines().stream().map(Cell.Line::text)).containsExactly("one");
    }
}
