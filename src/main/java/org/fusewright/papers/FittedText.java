package org.fusewright.papers;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Text in a field of a label: as large as it fits without breaking a word. What does not fit at the
 * smallest size is cut with an ellipsis, the longest passage first.
 */
final class FittedText {

    private static final float STEP = 0.5f;
    private static final Pattern BREAKS = Pattern.compile(" |(?<=[/,;:_·])(?!(?<=\\d,)\\d)");

    /** A passage in its typeface; it starts a new line. */
    record Passage(PaperFont font, String text) {

        static Passage plain(String text) {
            return new Passage(PaperFont.REGULAR, text);
        }

        static Passage strong(String text) {
            return new Passage(PaperFont.BOLD, text);
        }

        /** Whether each word has room on a line of its own. */
        private boolean keepsWords(float size, float width) {
            Lettering lettering = new Lettering(font, size);
            return BREAKS.splitAsStream(font.printable(text))
                    .allMatch(word -> lettering.width(word) <= width);
        }
    }

    private final List<Cell.Line> lines;

    private FittedText(List<Cell.Line> lines) {
        this.lines = lines;
    }

    static FittedText fit(
            List<Passage> passages, float width, float height, float largest, float smallest) {
        List<Passage> said = passages.stream().filter(each -> !each.text().isEmpty()).toList();
        for (float size = largest; size > smallest; size -= STEP) {
            float tried = size;
            if (said.stream().allMatch(passage -> passage.keepsWords(tried, width))) {
                List<Cell.Line> lines = wrap(said, size, width, most(said, Integer.MAX_VALUE));
                if (height(lines) <= height) {
                    return new FittedText(lines);
                }
            }
        }
        return new FittedText(cut(said, smallest, width, height));
    }

    private static List<Cell.Line> cut(
            List<Passage> passages, float size, float width, float height) {
        int room = (int) (height / new Lettering(PaperFont.REGULAR, size).leading() + 0.01f);
        int[] most = most(passages, room);
        for (int i = 0; i < most.length; i++) {
            most[i] = Math.max(1, Math.min(most[i], lines(passages.get(i), size, width).size()));
        }
        while (sum(most) > Math.max(room, most.length)) {
            most[longest(most)]--;
        }
        List<Cell.Line> lines = wrap(passages, size, width, most);
        return lines.subList(0, Math.min(lines.size(), Math.max(1, room)));
    }

    private static int[] most(List<Passage> passages, int each) {
        int[] most = new int[passages.size()];
        Arrays.fill(most, each);
        return most;
    }

    private static int sum(int[] numbers) {
        int sum = 0;
        for (int number : numbers) {
            sum += number;
        }
        return sum;
    }

    private static int longest(int[] numbers) {
        int longest = 0;
        for (int i = 1; i < numbers.length; i++) {
            longest = numbers[i] > numbers[longest] ? i : longest;
        }
        return longest;
    }

    private static List<String> lines(Passage passage, float size, float width) {
        return new Lettering(passage.font(), size).wrap(passage.text(), width);
    }

    private static List<Cell.Line> wrap(
            List<Passage> passages, float size, float width, int[] most) {
        List<Cell.Line> lines = new ArrayList<>();
        for (int i = 0; i < most.length; i++) {
            Lettering lettering = new Lettering(passages.get(i).font(), size);
            for (String line : lettering.wrap(passages.get(i).text(), width, most[i])) {
                lines.add(new Cell.Line(lettering, line));
            }
        }
        return lines;
    }

    private static float height(List<Cell.Line> lines) {
        return (float) lines.stream().mapToDouble(line -> line.lettering().leading()).sum();
    }

    List<Cell.Line> lines() {
        return List.copyOf(lines);
    }

    float height() {
        return height(lines);
    }

    /** Draws each line round a middle, from the top on. */
    void drawCentred(Pen pen, float middle, float top) {
        float y = top;
        for (Cell.Line line : lines) {
            pen.textCentred(line.lettering(), line.text(), middle, y - line.lettering().ascent());
            y -= line.lettering().leading();
        }
    }

    /** Draws from the left upper corner on. */
    void draw(Pen pen, float left, float top) {
        float y = top;
        for (Cell.Line line : lines) {
            pen.text(line.lettering(), line.text(), left, y - line.lettering().ascent());
            y -= line.lettering().leading();
        }
    }
}
