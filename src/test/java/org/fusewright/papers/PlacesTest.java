package org.fusewright.papers;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.core.words.Language;
import org.fusewright.core.words.UnitSystem;
import org.fusewright.core.words.Wording;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import java.util.List;

class PlacesTest {

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "B1-1a                       | B1-1a",
                "B1-1a B1-1b B1-2a           | B1-1a, 1b, 2a",
                "B1-2a B1-1b B1-1a           | B1-1a, 1b, 2a",
                "B1-1a B1-1b B1-2a B1-2b     | B1-1a to 2b",
                "B1-1a B2-1a B1-3b           | B1-1a, 3b; B2-1a",
                "B1-9b B1-10a B1-10b B1-11a  | B1-9b to 11a",
                "B1-2 B1-3/4 B2-1            | B1-2, 3/4; B2-1",
                "pump/out pump/return c/out  | pump/out, return; c/out",
                "spares spares B1            | 2 × spares; B1",
                "/odd                        | /odd"
            })
    void namesPlacesInFewWords(String places, String compact) {
        assertThat(Places.compact(List.of(places.split(" +")), Wording.ENGLISH)).isEqualTo(compact);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "B1-1a/B1-1b/B1-2a/B1-2b        | B1-1a bis 2b",
                "main device battery/ground     | Hauptsicherung battery; Masse",
                "load Left lamp/load Left lamp  | 2 × Verbraucher Left lamp",
            })
    void namesThemInTheReadersLanguage(String places, String compact) {
        Wording german = new Wording(Language.GERMAN, UnitSystem.METRIC);
        assertThat(Places.compact(List.of(places.split("/")), german)).isEqualTo(compact);
    }
}
