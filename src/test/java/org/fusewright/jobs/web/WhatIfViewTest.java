package org.fusewright.jobs.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.core.check.Basis;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.Check.Measured;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Subject;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.sizing.WhatIf.Answer;
import org.fusewright.core.sizing.WhatIf.Point;
import org.fusewright.core.sizing.WhatIf.Varied;
import org.fusewright.core.words.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

class WhatIfViewTest {

    /** A verdict, with a star where something is worse than in the design. */
    private static Point point(String value, String verdict) {
        boolean worse = verdict.endsWith("*");
        Verdict worst = Verdict.valueOf(verdict.replace("*", "").toUpperCase());
        Check check =
                Check.atMost(
                        CheckCode.VOLTAGE_DROP,
                        Subject.circuit("c"),
                        new Measured(worst == Verdict.PASS ? 1 : 3, 2, "%"),
                        worst,
                        Text.verbatim("It loses so much."),
                        Basis.commonPractice());
        List<Check> notPassed = worst == Verdict.PASS ? List.of() : List.of(check);
        return new Point(value, Text.verbatim(value), worst, worse, check, notPassed);
    }

    private static WhatIfView view(
            Varied varied, String designed, List<Point> points, double unchanged, double stands) {
        boolean number = varied.isNumber();
        return new WhatIfView(
                "/circuits/0",
                varied,
                Optional.of(
                        new Answer(
                                "c",
                                varied,
                                designed,
                                points,
                                number ? OptionalDouble.of(unchanged) : OptionalDouble.empty(),
                                number ? OptionalDouble.of(stands) : OptionalDouble.empty())));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    AMBIENT | pass    | 63  | 78  | Nothing gets worse up to 63 °C; it stands up to 78 °C.
                    AMBIENT | pass    | 63  | 63  | Nothing gets worse up to 63 °C; beyond that it fails.
                    AMBIENT | pass    | 40  | 78  | Beyond 40 °C something gets worse; it stands up to 78 °C.
                    AMBIENT | pass    | 40  | 40  | Beyond 40 °C it fails.
                    AMBIENT | pass    | 63  | 200 | Nothing gets worse up to 63 °C; it stands up to 200 °C, the most that is looked at.
                    RUN     | pass    | 100 | 100 | Nothing gets worse up to 100 m, the most that is looked at.
                    RUN     | caution | 63  | 78.5 | Nothing gets worse up to 63 m; it stands up to 78.5 m. As designed it has a caution already.
                    RUN     | fail    | 63  | 78  | As designed it fails already. Nothing gets worse up to 63 m, and nothing more fails up to 78 m.
                    RUN     | fail    | 40  | 40  | As designed it fails already. Beyond 40 m more fails.
                    RUN     | fail    | 100 | 100 | As designed it fails already. Nothing gets worse up to 100 m, the most that is looked at.
                    """)
    void saysHowFarItGoes(
            Varied varied, String verdict, double unchangedTo, double standsTo, String says) {
        WhatIfView view = view(varied, "40", List.of(point("40", verdict)), unchangedTo, standsTo);

        assertThat(view.summary().replace('\u00a0', ' ')).isEqualTo(says);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    0.5 fail*, 1 caution*, 1.5 pass, 2.5 pass, 4 pass | 2.5 | Nothing gets worse down to 1.5 mm2; it stands down to 1 mm2.
                    0.5 fail*, 1.5 pass, 2.5 pass                     | 2.5 | Nothing gets worse down to 1.5 mm2; thinner than that it fails.
                    0.5 fail*, 1.5 caution*, 2.5 pass                 | 2.5 | Any thinner is worse; it stands down to 1.5 mm2.
                    0.5 caution*, 1.5 fail*, 2.5 pass                 | 2.5 | The next thinner one fails.
                    0.5 pass, 1.5 pass, 2.5 fail*                     | 1.5 | Nothing gets worse down to 0.5 mm2.
                    0.5 pass, 1.5 pass                                | 0.5 | There is no thinner one in stock.
                    0.5 fail*, 1.5 fail, 2.5 fail                     | 2.5 | As designed it fails already. Nothing gets worse down to 1.5 mm2.
                    """)
    void saysHowThinItMayBe(String sizes, String designed, String says) {
        List<Point> points = new ArrayList<>();
        for (String size : sizes.split(", *")) {
            String[] words = size.split(" ");
            points.add(point(words[0] + " mm2", words[1]));
        }

        WhatIfView view = view(Varied.SIZE, designed + " mm2", points, 0, 0);

        assertThat(view.summary().replace('\u00a0', ' ')).isEqualTo(says);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
                    pass  | fail* | No worse: manual-reset. Worse: auto-reset.
                    pass  | pass  | No worse: manual-reset, auto-reset.
                    fail* | fail* | Worse: manual-reset, auto-reset.
                    """)
    void saysWhichOtherKindsDo(String manual, String automatic, String says) {
        List<Point> points =
                List.of(
                        point("fuse", "pass"),
                        point("manual-reset", manual),
                        point("auto-reset", automatic));

        assertThat(view(Varied.KIND, "fuse", points, 0, 0).summary()).isEqualTo(says);
        assertThat(view(Varied.KIND, "fuse", points.subList(0, 1), 0, 0).summary())
                .isEqualTo("There is no other kind in stock.");
    }

    @Test
    void tellsOfEachValueWhatDecidesThere() {
        List<Point> points = List.of(point("40", "pass"), point("50", "fail*"));

        List<WhatIfView.Line> rows = view(Varied.AMBIENT, "40", points, 45, 45).rows();

        assertThat(rows).extracting(WhatIfView.Line::own).containsExactly(true, false);
        assertThat(rows).extracting(WhatIfView.Line::word).containsExactly("✓ pass", "✗ fail");
        assertThat(rows)
                .extracting(WhatIfView.Line::says)
                .containsExactly("No worse; least left: It loses so much.", "It loses so much.");
    }

    @Test
    void saysThatThereIsNoAnswer() {
        WhatIfView view = new WhatIfView("/circuits/0", Varied.RUN, Optional.empty());

        assertThat(view.summary()).contains("no answer");
        assertThat(view.rows()).isEmpty();
    }
}
