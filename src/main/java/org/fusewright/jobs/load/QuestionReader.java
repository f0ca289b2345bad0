package org.fusewright.jobs.load;

import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.job.JobProblem;
import org.fusewright.core.quantity.WireSize;
import org.fusewright.core.sizing.WhatIf.Varied;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.fusewright.jobs.JobReading;
import org.fusewright.jobs.WhatIfQuestion;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Reads what somebody asks about a design: {@code circuit}, {@code vary}, perhaps {@code values},
 * and the {@code job} where it is not a kept one.
 */
public final class QuestionReader {
    private static final String JOB = "job";
    private static final String VARY = "vary";
    private static final String VALUES = "values";

    private static final Range CELSIUS = Range.from(-60, Varied.AMBIENT.most(), "things.celsius");
    private static final Range VALUE_COUNT = Range.whole(0, 50, "things.values");
    private static final Text VARIED_WORDS =
            JobReader.oneOf(Stream.of(Varied.values()).map(Varied::code));

    private QuestionReader() {}

    /**
     * Reads a question that brings its job.
     *
     * @throws org.fusewright.core.job.MalformedJobException when this is no JSON at all
     */
    public static WhatIfQuestion read(byte[] json) {
        return read(json, QuestionReader::questionWithJob);
    }

    /**
     * Reads a question about a job that is known already.
     *
     * @throws org.fusewright.core.job.MalformedJobException when this is no JSON at all
     */
    public static WhatIfQuestion read(byte[] json, JobReading job) {
        return read(json, fields -> question(fields, Optional.of(job), ""));
    }

    private static WhatIfQuestion read(byte[] json, Function<Fields, WhatIfQuestion> reader) {
        JsonTree tree = JsonTree.parse(json);
        List<JobProblem> problems = new ArrayList<>(tree.problems());
        WhatIfQuestion question;
        try (Fields fields = Fields.of(tree.root(), "", problems)) {
            question = reader.apply(fields);
        }
        return question.withProblems(problems);
    }

    private static WhatIfQuestion questionWithJob(Fields fields) {
        Optional<JobReading> job =
                fields.find(JOB, Phrase.of("wrong.give.job")).map(JobReader::read);
        return question(fields, job, "/" + JOB);
    }

    private static WhatIfQuestion question(Fields fields, Optional<JobReading> job, String jobAt) {
        String circuit = fields.getText(WhatIfQuestion.CIRCUIT, TextForm.ID, "");
        fields.require(VARY, VARIED_WORDS);
        Optional<Varied> varied =
                fields.findParsed(VARY, QuestionReader::parseVaried, VARIED_WORDS);
        fields.ask(VALUES);
        List<Double> numbers = List.of();
        Map<String, String> names = Map.of();
        if (varied.isPresent()) {
            switch (varied.get()) {
                case AMBIENT -> numbers = fields.listNumbers(VALUES, VALUE_COUNT, CELSIUS);
                case RUN -> numbers = fields.listNumbers(VALUES, VALUE_COUNT, JobReader.LENGTH);
                case SIZE -> names = sizes(fields);
                case KIND -> names = kinds(fields);
            }
        }
        return new WhatIfQuestion(
                job, jobAt, circuit, varied.orElse(Varied.AMBIENT), numbers, names, List.of());
    }

    /** Labels of sizes by their pointers. */
    private static Map<String, String> sizes(Fields fields) {
        Map<String, String> labels = new LinkedHashMap<>();
        Map<String, WireSize> sizes =
                fields.listParsed(
                        VALUES, VALUE_COUNT, JobReader::parseGauge, JobReader.GAUGE_WORDS);
        sizes.forEach((at, size) -> labels.put(at, size.label()));
        return labels;
    }

    /** Codes of kinds by their pointers. */
    private static Map<String, String> kinds(Fields fields) {
        Map<String, String> codes = new LinkedHashMap<>();
        Map<String, DeviceKind> kinds =
                fields.listParsed(VALUES, VALUE_COUNT, DeviceKind::parse, JobReader.DEVICE_KINDS);
        kinds.forEach((at, kind) -> codes.put(at, kind.code()));
        return codes;
    }

    private static Optional<Varied> parseVaried(String code) {
        return Stream.of(Varied.values()).filter(varied -> varied.code().equals(code)).findFirst();
    }
}
