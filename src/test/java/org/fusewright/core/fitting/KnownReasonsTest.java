package org.fusewright.core.fitting;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;

/** What is kept is what would be worked out anew. */
class KnownReasonsTest {

    private final KnownReasons known = new KnownReasons();

    private List<Rejected> list(FittingTask task, Arrangement arrangement) {
        return known.list(SeatedTask.of(task, arrangement));
    }

    @Test
    void areTheReasonsWorkedOutAnew() {
        int named = 0;
        for (int seed = 0; seed < 400; seed++) {
            SplittableRandom random = new SplittableRandom(60_000 + seed);
            FittingTask task = RandomTasks.task(random, 1 + random.nextInt(14), random.nextInt(3));
            Arrangement cheapest = Fitter.fit(task);
            List<Rejected> anew = Reasons.list(task, cheapest);
            named += anew.size();
            assertThat(list(task, cheapest)).as(Drawing.text(task)).isEqualTo(anew);
            assertThat(list(task, cheapest)).as(Drawing.text(task)).isEqualTo(anew);
        }
        assertThat(named).isGreaterThan(400);
    }

    /** Each is asked after the one before it, of which it must take nothing. */
    @Test
    void areThoseOfWhatIsAskedAndOfNothingLikeIt() {
        List<String> alike =
                List.of(
                        "d1 d2 d3 | 3P=9 4P=11 | 1 spare",
                        "d1 d2 d3 | 3P=9 4P=12 | 1 spare",
                        "d1 d2 d3 | 3P=9 4P=11 | 0 spare",
                        "d1 d2 d3@rear | 3P=9 4P=11 | 1 spare",
                        "d1@rear d2 d3@rear | 3P=9 4P=11 | 1 spare",
                        "d1 d2 r3 | 3P=9 4P=11 | 1 spare",
                        "d1^30 d2 d3 | 3P=9 4P=11 4Pt=13^35 | 1 spare",
                        "d1^30 d2 d3 | 4P^20 4Pt=13^35",
                        "d1 d2^30 d3^30 | 4P^20 4Pt=13^35",
                        "d1:20A d2:20A d3:20A | 4P=9:40/-",
                        "d1:10A d2:10A d3:20A | 4P=9:40/-",
                        "d1:20A d2:10A d3:20A | 4P=9:40/-",
                        "d1#a.1 d2#b.1 | 3P=9",
                        "d1 d2 | 3P=9");
        for (String drawn : alike) {
            FittingTask task = Drawing.task(drawn);
            Arrangement cheapest = Fitter.fit(task);
            assertThat(list(task, cheapest)).as(drawn).isEqualTo(Reasons.list(task, cheapest));
        }
    }

    @Test
    void areKeptForJobsThatDifferInNamesAndOrderAlone() {
        FittingTask task = Drawing.task("d1 d2@rear d3@rear | 3P=9 4P=11 | 1 spare");
        List<Rejected> first = list(task, Fitter.fit(task));
        List<FittingItem> items = new ArrayList<>(task.items());
        Collections.shuffle(items, new Random(1));
        FittingTask shuffled =
                new FittingTask(items, task.forms(), 1)
                        .withItems(item -> item.withLocation("new " + item.location()));
        assertThat(first).isNotEmpty();
        assertThat(list(shuffled, Fitter.fit(shuffled))).isSameAs(first);
    }
}
