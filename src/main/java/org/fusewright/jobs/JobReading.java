package org.fusewright.jobs;

import org.fusewright.core.job.Job;
import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.MalformedJobException;

import tools.jackson.databind.JsonNode;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * A job document as read.
 *
 * @param job the job with every default; where the document is wrong, a placeholder stands
 * @param fieldProblems what is wrong with single fields
 * @param relationProblems what is wrong between fields that are right by themselves
 */
public record JobReading(
        JsonNode document,
        Job job,
        List<JobProblem> fieldProblems,
        List<JobProblem> relationProblems) {
    public JobReading {
        fieldProblems = List.copyOf(fieldProblems);
        relationProblems = List.copyOf(relationProblems);
    }

    public static JobReading of(
            JsonNode document,
            Job job,
            List<JobProblem> fieldProblems,
            List<JobProblem> relationProblems) {
        return new JobReading(
                document, job, fieldProblems, notExplainedBy(fieldProblems, relationProblems));
    }

    /** All problems, in the order in which they were found. */
    public List<JobProblem> problems() {
        return Stream.concat(fieldProblems.stream(), relationProblems.stream()).toList();
    }

    public boolean isSound() {
        return fieldProblems.isEmpty() && relationProblems.isEmpty();
    }

    /**
     * All problems of this reading and of a later look at its placeholders. Of those, what stands
     * at, above or below a field already named is its mere consequence and left out.
     */
    public List<JobProblem> problemsWith(List<JobProblem> later) {
        List<JobProblem> all = new ArrayList<>(problems());
        all.addAll(notExplainedBy(problems(), later));
        return all;
    }

    /**
     * @throws MalformedJobException when there is any problem
     */
    public Job getJob() {
        if (!isSound()) {
            throw new MalformedJobException(problems());
        }
        return job;
    }

    private static List<JobProblem> notExplainedBy(
            List<JobProblem> earlier, List<JobProblem> later) {
        return later.stream()
                .filter(problem -> earlier.stream().noneMatch(named -> touches(named, problem)))
                .toList();
    }

    private static boolean touches(JobProblem one, JobProblem other) {
        String a = one.pointer() + "/";
        String b = other.pointer() + "/";
        return a.startsWith(b) || b.startsWith(a);
    }
}
