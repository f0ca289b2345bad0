package org.fusewright.jobs.load;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.core.words.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

class PastedRowsTest {
    /** Rows as lines of "name=text", by name. */
    private static String told(String text, String first) {
        return PastedRows.read(text, first).rows().stream()
                .map(row -> (row.load() ? "+" : "") + told(row.texts()))
                .collect(Collectors.joining("\n"));
    }

    private static String told(Map<String, String> texts) {
        return new TreeMap<>(texts)
                .entrySet().stream()
                        .map(text -> text.getKey().replace("loads/0/", "") + "=" + text.getValue())
                        .collect(Collectors.joining(" "));
    }

    @Test
    void fillsTheColumnsOfThePageFromTheFirstOnOn() {
        assertThat(told("Horn\tcoil\t2\t4,5\tA\t0.8\tbattery\tunder seat\n", "title"))
                .isEqualTo(
                        "feed=battery amount=4,5 count=2 kind=coil unit=A location=under seat"
                                + " runM=0.8 title=Horn");
        assertThat(told("4\tA\r\n5\tA\r\n", "loads/0/amount"))
                .isEqualTo("amount=4 unit=A\namount=5 unit=A");
        assertThat(told("1\n2\n3", "runM")).isEqualTo("runM=1\nrunM=2\nrunM=3");
    }

    @Test
    void goesByAHeading() {
        assertThat(
                        told(
                                "Kind\tName\tWatts\tLength\n"
                                        + "LED\tTail\t5\t2 m\n"
                                        + "pump\tFuel\t\t1,1\n",
                                "feed"))
                .isEqualTo(
                        "amount=5 kind=led unit=W runM=2 m title=Tail\n"
                                + "kind=pump runM=1,1 title=Fuel");
        assertThat(
                        told(
                                "Line\tCircuit\tDraws\treturnPath\tloads/0/duty\n"
                                        + "circuit\tHorns\t4 A\twire\tmomentary\n"
                                        + "load\tLow tone\t3 A\t\t\n",
                                "title"))
                .isEqualTo(
                        "amount=4 duty=momentary unit=A returnPath=wire title=Horns\n"
                                + "+amount=3 duty= unit=A returnPath= title=Low tone");
    }

    @Test
    void keepsTheUnitThatALengthOrItsHeadingHas() {
        assertThat(told("Circuit\tRun, ft\nHorn\t3.61\nLamp\t2 m\nPump\tlong\n", "title"))
                .isEqualTo("runM=1.1 m title=Horn\nrunM=2 m title=Lamp\nrunM=long title=Pump");
        assertThat(told("Circuit\trelay/triggerM, ft\nHorn\t2.6\n", "title"))
                .isEqualTo("relay/triggerM=2.6 ft title=Horn");
        assertThat(told("6 ft\n3,5\n", "runM")).isEqualTo("runM=1.829 m\nrunM=3,5");
    }

    @Test
    void readsThePagesWordsInEachLanguage() {
        assertThat(
                        told(
                                "Zeile\tStromkreis\tArt\tZieht\tEinheit\tWeg, m\n"
                                        + "Stromkreis\tHupe\tSpule\t4,5\tA\t0,8\n"
                                        + "Verbraucher\tZweite\tGlühlampe\t3\tW\t\n",
                                "title"))
                .isEqualTo(
                        "amount=4,5 kind=coil unit=A runM=0.8 m title=Hupe\n"
                                + "+amount=3 kind=filament-lamp unit=W runM= title=Zweite");
    }

    @ParameterizedTest
    @CsvSource({
        "55W, amount=55 unit=W",
        "55 watts, amount=55 unit=W",
        "'4,5 A', amount=4.5 unit=A",
        "500 mA, amount=0.5 unit=A",
        "55, amount=55",
        "a lot, amount=a lot",
        "5 A or 6 A, amount=5 A or 6 A",
    })
    void readsAnAmountWithItsUnitAndLeavesWhatIsNone(String cell, String read) {
        assertThat(told(cell, "loads/0/amount")).isEqualTo(read);
    }

    @ParameterizedTest
    @CsvSource({
        "filament lamp, kind=filament-lamp",
        "Headlight, kind=filament-lamp",
        "LED, kind=led",
        "Fuel pumps, kind=pump",
        "flux capacitor, kind=flux capacitor",
    })
    void readsAKindByItsWordsAndLeavesWhatIsNone(String cell, String read) {
        assertThat(told(cell, "loads/0/kind")).isEqualTo(read);
    }

    @Test
    void saysWhatBelongsNowhere() {
        assertThat(PastedRows.read("Name\tKind\tPrice\nHorn\tcoil\t12\n", "title").leftOver())
                .extracting(Text::english)
                .containsExactly("column “Price”");
        assertThat(PastedRows.read("seat\tsomething else\n", "location").leftOver())
                .extracting(Text::english)
                .containsExactly("“something else”");
        assertThat(PastedRows.read("x\n".repeat(420), "title").leftOver())
                .extracting(Text::english)
                .containsExactly("20 more rows");
    }

    @Test
    void takesQuotedCellsAndWhatIsNoTable() {
        assertThat(told("\"Horn \"\"low\"\"\"\tcoil\n", "title"))
                .isEqualTo("kind=coil title=Horn \"low\"");
        assertThat(told("6\" pipe\tcoil\n", "title")).isEqualTo("kind=coil title=6\" pipe");
        assertThat(told("", "title")).isEmpty();
        assertThat(told("\n\t\n", "title")).isEmpty();
    }

    @Test
    void takesTheApostropheOffThatAFormulaGot() {
        assertThat(told("'=Horn\tcoil\n'quoted\tcoil", "title"))
                .isEqualTo("kind=coil title==Horn\nkind=coil title='quoted");
    }
}
