package org.fusewright.contract;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.catalogs.load.CatalogFolder;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitPlanner;
import org.fusewright.core.kit.PartLine;
import org.fusewright.core.words.Language;
import org.fusewright.core.words.Recall;
import org.fusewright.core.words.Text;
import org.fusewright.core.words.UnitSystem;
import org.fusewright.core.words.Wording;
import org.fusewright.jobs.load.JobReader;
import org.junit.jupiter.api.Test;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.LongStream;
import java.util.stream.Stream;

/** What is told of the blocks of any job can be said in each language. */
class KitWordsTest {
    private static final KitPlanner PLANNER =
            KitPlanner.of(CatalogFolder.read(Path.of("catalog-sample")).catalog());
    private static final Set<String> PLAIN_PLACES = Set.of("ground", "battery", "controller");
    private static final Wording GERMAN = new Wording(Language.GERMAN, UnitSystem.METRIC);

    @Test
    void saysOfTheBlocksInGermanWhatItSaysInEnglish() {
        assertThat(texts().toList())
                .hasSizeGreaterThan(100)
                .allSatisfy(text -> assertThat(GERMAN.say(text)).isNotEqualTo(text.english()));
    }

    @Test
    void saysWhereLeadsEndAndPartsBelongInGerman() {
        assertThat(kits().flatMap(KitWordsTest::places).distinct().toList())
                .filteredOn(place -> place.contains(" ") || PLAIN_PLACES.contains(place))
                .hasSizeGreaterThan(20)
                .allSatisfy(
                        place -> assertThat(GERMAN.say(Recall.place(place))).isNotEqualTo(place));
    }

    private static Stream<String> places(Kit kit) {
        Stream<String> ends = kit.leads().flatMap(lead -> Stream.of(lead.from(), lead.to()));
        return Stream.concat(
                ends, kit.parts().stream().map(PartLine::usedAt).flatMap(List::stream));
    }

    private static Stream<Kit> kits() {
        return LongStream.range(0, 40)
                .mapToObj(
                        seed -> PLANNER.plan(JobReader.read(JobGenerator.generate(seed)).getJob()));
    }

    private static Stream<Text> texts() {
        return kits().map(Kit::fit)
                .flatMap(
                        fit ->
                                Stream.concat(
                                        Stream.concat(Stream.of(fit.proof()), fit.why().stream()),
                                        fit.moved().stream().map(Kit.Move::says)));
    }
}
