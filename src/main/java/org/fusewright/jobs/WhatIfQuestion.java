package org.fusewright.jobs;

import org.fusewright.core.job.JobProblem;
import org.fusewright.core.sizing.WhatIf.Varied;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A question as read: what becomes of a circuit when one thing differs.
 *
 * @param job the job that it is about; empty when the question lacks it
 * @param jobAt where the job stands in the document that was sent; empty when it came another way
 * @param numbers the values, where they are numbers; none for the usual ones
 * @param names the values by their pointers, where they are names; none for the usual ones
 * @param problems what is wrong with the question itself; then placeholders stand
 */
public record WhatIfQuestion(
        Optional<JobReading> job,
        String jobAt,
        String circuit,
        Varied varied,
        List<Double> numbers,
        Map<String, String> names,
        List<JobProblem> problems) {
    /** The name of the field that names the circuit. */
    public static final String CIRCUIT = "circuit";

    public WhatIfQuestion {
        numbers = List.copyOf(numbers);
        names = Collections.unmodifiableMap(new LinkedHashMap<>(names));
        problems = List.copyOf(problems);
    }

    /** Asks for the usual values. */
    public static WhatIfQuestion usual(JobReading job, String circuit, Varied varied) {
        return new WhatIfQuestion(
                Optional.of(job), "", circuit, varied, List.of(), Map.of(), List.of());
    }

    public WhatIfQuestion withProblems(List<JobProblem> others) {
        return new WhatIfQuestion(job, jobAt, circuit, varied, numbers, names, others);
    }
}
