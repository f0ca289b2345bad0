package org.fusewright.web;

import static org.assertj.core.api.Assertions.assertThat;

import gg.jte.Content;
import gg.jte.html.OwaspHtmlTemplateOutput;
import gg.jte.output.StringOutput;

import org.junit.jupiter.api.Test;

/** What a browser says it holds is sent as its place alone, everything else whole. */
class HeldPartsTest {
    private static final String PLACE = "<template id=\"part\"></template>";

    private static String print(HeldParts held, String part) {
        StringOutput page = new StringOutput();
        held.or(says(PLACE), says(part)).writeTo(new OwaspHtmlTemplateOutput(page));
        return page.toString();
    }

    private static Content says(String text) {
        return page -> page.writeContent(text);
    }

    @Test
    void aPartIsSentWholeUntilTheBrowserHoldsIt() {
        HeldParts first = HeldParts.none();
        assertThat(print(first, "<p id=\"part\">5 µA</p>")).isEqualTo("<p id=\"part\">5 µA</p>");
        assertThat(print(first, "<p id=\"other\">b</p>")).isEqualTo("<p id=\"other\">b</p>");

        HeldParts next = HeldParts.of(first.printed());
        assertThat(print(next, "<p id=\"part\">5 µA</p>")).isEqualTo(PLACE);
        assertThat(print(next, "<p id=\"part\">6 µA</p>")).isEqualTo("<p id=\"part\">6 µA</p>");
    }

    @Test
    void theBrowserIsToldOfAllPartsWhetherSentOrNot() {
        HeldParts first = HeldParts.none();
        print(first, "a");
        print(first, "b");
        HeldParts next = HeldParts.of(first.printed());
        print(next, "a");
        print(next, "b");
        assertThat(next.printed()).isEqualTo(first.printed());
        assertThat(first.printed().split(" ")).doesNotHaveDuplicates().hasSize(2);
    }

    @Test
    void whatIsNoDigestHoldsNothing() {
        for (String sent : new String[] {"", " ", "\u0000", "not a digest", "<p>"}) {
            assertThat(print(HeldParts.of(sent), "a")).as(sent).isEqualTo("a");
        }
    }
}
