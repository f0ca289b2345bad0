package org.fusewright.papers;

import java.util.ArrayList;
import java.util.List;

/** The text of one place in a table: passages below each other, each in its lettering. */
record Cell(List<Passage> passages) {

    /** One sign that stands for a box to tick by pen. */
    static final Cell TICK_BOX = of(Style.TICK_BOX, "☐");

    record Passage(Lettering lettering, String text) {}

    /** A line of a passage, broken to the width of a column. */
    record Line(Lettering lettering, String text) {}

    Cell {
        passages = List.copyOf(passages);
    }

    static Cell of(String text) {
        return of(Style.BODY, text);
    }

    static Cell of(Lettering lettering, String text) {
        return new Cell(List.of(new Passage(lettering, text)));
    }

    /** This cell with a passage below; without, when there is nothing to say. */
    Cell plus(Lettering lettering, String text) {
        if (text.isEmpty()) {
            return this;
        }
        List<Passage> more = new ArrayList<>(passages);
        more.add(new Passage(lettering, text));
        return new Cell(more);
    }

    List<Line> lines(float width) {
        List<Line> lines = new ArrayList<>();
        for (Passage passage : passages) {
            for (String text : passage.lettering().wrap(passage.text(), width)) {
                lines.add(new Line(passage.lettering(), text));
            }
        }
        return lines;
    }
}
