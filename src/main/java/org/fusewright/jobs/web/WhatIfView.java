package org.fusewright.jobs.web;

import org.fusewright.core.check.Verdict;
import org.fusewright.core.sizing.WhatIf.Answer;
import org.fusewright.core.sizing.WhatIf.Point;
import org.fusewright.core.sizing.WhatIf.Varied;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.fusewright.core.words.Unit;
import org.fusewright.web.Figures;
import org.fusewright.web.Words;

import java.util.ArrayList;
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
            return Words.say("verdict-signed." + verdict.code());
        }
    }

    private static final char NO_BREAK = '\u00a0';

    /** The questions, each with what is sent for it and its word on the page. */
    public static List<JobForm.Option> asks() {
        return List.of(
                new JobForm.Option(Varied.AMBIENT.code(), Words.say("whatif.ask.hotter")),
                new JobForm.Option(Varied.RUN.code(), Words.say("whatif.ask.longer")),
                new JobForm.Option(Varied.SIZE.code(), Words.say("whatif.ask.thinner")),
                new JobForm.Option(Varied.KIND.code(), Words.say("whatif.ask.another-kind")));
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
        String key =
                switch (varied) {
                    case AMBIENT -> "whatif.caption.hotter";
                    case RUN -> "whatif.caption.longer";
                    case SIZE -> "whatif.caption.thinner";
                    case KIND -> "whatif.caption.another-kind";
                };
        return Words.say(key, answer.map(Answer::circuit).orElse(""));
    }

    public String heading() {
        return Words.say(
                switch (varied) {
                    case AMBIENT -> "whatif.around";
                    case RUN -> "whatif.run";
                    case SIZE -> "whatif.trunk";
                    case KIND -> "whatif.device";
                });
    }

    public List<Line> rows() {
        return answer.map(Answer::points).orElse(List.of()).stream()
                .map(
                        point ->
                                new Line(
                                        value(point),
                                        isOwn(point),
                                        point.verdict(),
                                        isWorse(point)
                                                ? Words.say(point.nearest().says())
                                                : Words.say(
                                                        "whatif.least-left",
                                                        point.nearest().says())))
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
        Unit unit = varied.unit();
        return Figures.bare(value, unit, 2) + NO_BREAK + Figures.sign(unit);
    }

    private boolean isOwn(Point point) {
        return answer.isPresent() && point.value().equals(answer.get().designed());
    }

    /** The answer in one or two sentences. */
    public String summary() {
        if (answer.isEmpty()) {
            return Words.say("whatif.no-answer");
        }
        Answer told = answer.get();
        boolean failing = standing(told) == Verdict.FAIL;
        List<Text> range =
                switch (varied) {
                    case AMBIENT, RUN -> List.of(howFar(told, failing));
                    case SIZE -> List.of(howThin(told.points(), failing));
                    case KIND -> whichKinds(told.points());
                };
        List<Text> sentences = new ArrayList<>(range);
        switch (standing(told)) {
            case PASS -> {}
            case CAUTION -> sentences.add(Phrase.counted("whatif.cautions", countCautions(told)));
            case FAIL -> sentences.addFirst(Phrase.of("whatif.fails-already"));
        }
        return Words.say(Text.sentences(sentences));
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

    private static int countCautions(Answer answer) {
        return own(answer).map(point -> point.notPassed().size()).orElse(0);
    }

    private Text howFar(Answer answer, boolean failing) {
        double designed = Double.parseDouble(answer.designed());
        double unchangedTo = answer.unchangedTo().orElse(designed);
        double standsTo = answer.standsTo().orElse(designed);
        if (standsTo <= designed) {
            return Phrase.of(
                    failing ? "whatif.more-fails-beyond" : "whatif.fails-beyond", figure(designed));
        }
        boolean unchanged = unchangedTo > designed;
        if (unchangedTo >= varied.most()) {
            return Phrase.of("whatif.unchanged", upTo(unchangedTo));
        }
        String worst = figure(unchanged ? unchangedTo : designed);
        if (failing) {
            return Phrase.of(
                    unchanged ? "whatif.unchanged-no-more" : "whatif.worse-no-more",
                    worst,
                    upTo(standsTo));
        }
        if (standsTo <= unchangedTo) {
            return Phrase.of("whatif.unchanged-fails", worst);
        }
        return Phrase.of(
                unchanged ? "whatif.unchanged-stands" : "whatif.worse-stands",
                worst,
                upTo(standsTo));
    }

    private Text upTo(double value) {
        return value >= varied.most()
                ? Phrase.of("whatif.most", figure(value))
                : Text.verbatim(figure(value));
    }

    /** Goes from the design's size to thinner ones; they come thin to thick. */
    private Text howThin(List<Point> points, boolean failing) {
        int own = 0;
        while (!isOwn(points.get(own))) {
            own++;
        }
        if (own == 0) {
            return Phrase.of("whatif.none-thinner");
        }
        int unchanged = own;
        while (unchanged > 0 && !points.get(unchanged - 1).worse()) {
            unchanged--;
        }
        int stands = unchanged;
        while (stands > 0 && points.get(stands - 1).verdict() != Verdict.FAIL) {
            stands--;
        }
        String down = value(points.get(unchanged));
        if (unchanged == 0 || failing && unchanged < own) {
            return Phrase.of("whatif.unchanged-down", down);
        }
        if (failing) {
            return Phrase.of("whatif.any-thinner");
        }
        if (stands < unchanged) {
            String least = value(points.get(stands));
            return unchanged < own
                    ? Phrase.of("whatif.unchanged-down-stands", down, least)
                    : Phrase.of("whatif.any-thinner-stands", least);
        }
        return unchanged < own
                ? Phrase.of("whatif.unchanged-down-fails", down)
                : Phrase.of("whatif.next-thinner-fails");
    }

    private List<Text> whichKinds(List<Point> points) {
        String asGood = others(points, false);
        String worse = others(points, true);
        List<Text> kinds = new ArrayList<>();
        if (!asGood.isEmpty()) {
            kinds.add(Phrase.of("whatif.kinds-no-worse", asGood));
        }
        if (!worse.isEmpty()) {
            kinds.add(Phrase.of("whatif.kinds-worse", worse));
        }
        return kinds.isEmpty() ? List.of(Phrase.of("whatif.no-other-kind")) : kinds;
    }

    private String others(List<Point> points, boolean worse) {
        return points.stream()
                .filter(point -> !isOwn(point) && point.worse() == worse)
                .map(point -> Words.say(point.says()))
                .collect(Collectors.joining(", "));
    }
}
