package org.fusewright.jobs.web;

import org.fusewright.core.check.Verdict;
import org.fusewright.core.sizing.WhatIf.Answer;
import org.fusewright.core.sizing.WhatIf.Point;
import org.fusewright.core.sizing.WhatIf.Varied;
import org.fusewright.core.words.UnitSystem;
import org.fusewright.web.Figures;
import org.fusewright.web.Words;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What the page tells of a circuit when something differs.
 *
 * @param row the circuit's row in the form
 * @param answer empty when the job as typed has none
 */
public record WhatIfView(String row, Varied varied, Optional<Answer> answer) {
    /** One value: what it is, whether the design has it, and what is said of it. */
    public record Line(String value, boolean own, Verdict verdict, String says) {
        /** The verdict with its sign, so that it does not stand on colour alone. */
        public String word() {
            return switch (verdict) {
                case PASS -> "✓ pass";
                case CAUTION -> "! caution";
                case FAIL -> "✗ fail";
            };
        }
    }

    private static final char NO_BREAK = '\u00a0';

    private static final String NO_ANSWER =
            "✗ There is no answer for the entries as they stand: one of them needs another look.";

    /** The questions, each with what is sent for it and its word on the page. */
    public static List<JobForm.Option> asks() {
        return List.of(
                new JobForm.Option(Varied.AMBIENT.code(), "hotter"),
                new JobForm.Option(Varied.RUN.code(), "longer"),
                new JobForm.Option(Varied.SIZE.code(), "thinner"),
                new JobForm.Option(Varied.KIND.code(), "another kind"));
    }

    /** The id of the element that holds a circuit's answer. */
    public static String id(String row) {
        return JobForm.id(row) + "-what-if";
    }

    /** What the page sends to ask the same after a change, as JSON. */
    public String askedAgain() {
        return "{\"ask\": \"" + varied.code() + " " + row + "\"}";
    }

    public String caption() {
        return "Circuit "
                + answer.map(Answer::circuit).orElse("")
                + ": "
                + switch (varied) {
                    case AMBIENT -> "hotter around the leads and in the block";
                    case RUN -> "a longer run";
                    case SIZE -> "its trunk in another size";
                    case KIND -> "another kind of device";
                }
                + ", all else as designed";
    }

    public String heading() {
        return switch (varied) {
            case AMBIENT -> "Around";
            case RUN -> "Run";
            case SIZE -> "Trunk";
            case KIND -> "Device";
        };
    }

    public List<Line> rows() {
        return answer.map(Answer::points).orElse(List.of()).stream()
                .map(
                        point ->
                                new Line(
                                        value(point),
                                        isOwn(point),
                                        point.verdict(),
                                        (isWorse(point) ? "" : "No worse; least left: ")
                                                + Words.say(point.nearest().says())))
                .toList();
    }

    private static boolean isWorse(Point point) {
        // Of a value at which nothing passes any more, there is no least that is left.
        return point.worse() || point.nearest().verdict() != Verdict.PASS;
    }

    private String value(Point point) {
        return switch (varied) {
            case AMBIENT, RUN -> figure(Double.parseDouble(point.value()));
            case SIZE -> point.value().replace(' ', NO_BREAK);
            case KIND -> Words.say(point.says()).replace(" A", NO_BREAK + "A");
        };
    }

    private String figure(double value) {
        return Figures.plain(value, 2)
                + NO_BREAK
                + (varied == Varied.AMBIENT ? "°C" : varied.unit().sign(UnitSystem.METRIC));
    }

    private boolean isOwn(Point point) {
        return answer.isPresent() && point.value().equals(answer.get().designed());
    }

    /** The answer in one or two sentences. */
    public String summary() {
        if (answer.isEmpty()) {
            return NO_ANSWER;
        }
        Answer told = answer.get();
        boolean failing = standing(told) == Verdict.FAIL;
        String range =
                switch (varied) {
                    case AMBIENT, RUN -> howFar(told, failing);
                    case SIZE -> howThin(told.points(), failing);
                    case KIND -> whichKinds(told.points());
                };
        return switch (standing(told)) {
            case PASS -> range;
            case CAUTION -> range + " As designed it has " + cautions(told) + " already.";
            case FAIL -> "As designed it fails already. " + range;
        };
    }

    /** The design's own verdict. */
    private static Verdict standing(Answer answer) {
        return own(answer).map(Point::verdict).orElse(Verdict.PASS);
    }

    private static Optional<Point> own(Answer answer) {
        return answer.points().stream()
                .filter(point -> point.value().equals(answer.designed()))
                .findFirst();
    }

    private static String cautions(Answer answer) {
        int number = own(answer).map(point -> point.notPassed().size()).orElse(0);
        return number == 1 ? "a caution" : number + " cautions";
    }

    private String howFar(Answer answer, boolean failing) {
        double designed = Double.parseDouble(answer.designed());
        double unchangedTo = answer.unchangedTo().orElse(designed);
        double standsTo = answer.standsTo().orElse(designed);
        if (standsTo <= designed) {
            return "Beyond " + figure(designed) + (failing ? " more fails." : " it fails.");
        }
        String unchanged =
                unchangedTo > designed
                        ? "Nothing gets worse up to " + upTo(unchangedTo)
                        : "Beyond " + figure(designed) + " something gets worse";
        if (unchangedTo >= varied.most()) {
            return unchanged + ".";
        }
        if (failing) {
            return unchanged + ", and nothing more fails up to " + upTo(standsTo) + ".";
        }
        return unchanged
                + (standsTo > unchangedTo
                        ? "; it stands up to " + upTo(standsTo) + "."
                        : "; beyond that it fails.");
    }

    private String upTo(double value) {
        return figure(value) + (value >= varied.most() ? ", the most that is looked at" : "");
    }

    /** Goes from the design's size to thinner ones; they come thin to thick. */
    private String howThin(List<Point> points, boolean failing) {
        int own = 0;
        while (!isOwn(points.get(own))) {
            own++;
        }
        if (own == 0) {
            return "There is no thinner one in stock.";
        }
        int unchanged = own;
        while (unchanged > 0 && !points.get(unchanged - 1).worse()) {
            unchanged--;
        }
        int stands = unchanged;
        while (stands > 0 && points.get(stands - 1).verdict() != Verdict.FAIL) {
            stands--;
        }
        String down = "Nothing gets worse down to " + value(points.get(unchanged));
        if (unchanged == 0) {
            return down + ".";
        }
        if (failing) {
            return unchanged < own ? down + "." : "Any thinner is worse.";
        }
        if (stands < unchanged) {
            return (unchanged < own ? down : "Any thinner is worse")
                    + "; it stands down to "
                    + value(points.get(stands))
                    + ".";
        }
        return unchanged < own
                ? down + "; thinner than that it fails."
                : "The next thinner one fails.";
    }

    private String whichKinds(List<Point> points) {
        String asGood = others(points, false);
        String worse = others(points, true);
        if (asGood.isEmpty() && worse.isEmpty()) {
            return "There is no other kind in stock.";
        }
        return (asGood.isEmpty() ? "" : "No worse: " + asGood + ".")
                + (asGood.isEmpty() || worse.isEmpty() ? "" : " ")
                + (worse.isEmpty() ? "" : "Worse: " + worse + ".");
    }

    private String others(List<Point> points, boolean worse) {
        return points.stream()
                .filter(point -> !isOwn(point) && point.worse() == worse)
                .map(point -> Words.say(point.says()))
                .collect(Collectors.joining(", "));
    }
}
