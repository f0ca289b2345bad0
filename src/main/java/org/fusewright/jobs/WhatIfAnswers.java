package org.fusewright.jobs;

import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.quantity.WireSize;
import org.fusewright.core.sizing.WhatIf;
import org.fusewright.core.sizing.WhatIf.Answer;
import org.springframework.stereotype.Service;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** Answers what becomes of a design, from the catalog in force. */
@Service
public class WhatIfAnswers {
    private final Kits kits;

    WhatIfAnswers(Kits kits) {
        this.kits = kits;
    }

    /**
     * @throws NoCatalogException before the first import
     * @throws MalformedJobException with all that is wrong in the question and its job, and what
     *     they name that is not stocked
     */
    public Answer answer(WhatIfQuestion question) {
        List<JobProblem> problems = new ArrayList<>();
        Optional<WhatIf> whatIf = question.job().flatMap(job -> design(question, job, problems));
        problems.addAll(question.problems());
        whatIf.ifPresent(design -> problems.addAll(listNotStocked(question, design)));
        if (!problems.isEmpty()) {
            throw new MalformedJobException(problems);
        }
        return answer(question, whatIf.orElseThrow());
    }

    private static Answer answer(WhatIfQuestion question, WhatIf design) {
        Collection<String> names = question.names().values();
        return switch (question.varied()) {
            case AMBIENT -> design.hotter(question.numbers());
            case RUN -> design.longer(question.numbers());
            case SIZE -> design.thinner(named(names, design.listSizes(), WireSize::label));
            case KIND -> design.otherKind(named(names, design.listKinds(), DeviceKind::code));
        };
    }

    /** The design of the job; empty when the job does not have one, or not that circuit. */
    private Optional<WhatIf> design(
            WhatIfQuestion question, JobReading job, List<JobProblem> problems) {
        boolean known =
                job.job().circuits().stream()
                        .anyMatch(circuit -> circuit.id().equals(question.circuit()));
        try {
            if (known) {
                return Optional.of(kits.whatIf(job, question.circuit()));
            }
            problems.addAll(noSuchCircuit(question, job));
            // Says what else is wrong with the job.
            kits.plan(job);
        } catch (MalformedJobException malformed) {
            for (JobProblem problem : malformed.problems()) {
                problems.add(
                        new JobProblem(question.jobAt() + problem.pointer(), problem.detail()));
            }
        }
        return Optional.empty();
    }

    /** Nothing when the question's circuit is wrong in itself. */
    private static List<JobProblem> noSuchCircuit(WhatIfQuestion question, JobReading job) {
        String at = "/" + WhatIfQuestion.CIRCUIT;
        if (question.problems().stream().anyMatch(problem -> problem.pointer().equals(at))) {
            return List.of();
        }
        List<String> ids = new ArrayList<>();
        job.document()
                .path("circuits")
                .forEach(circuit -> circuit.path("id").stringValueOpt().ifPresent(ids::add));
        return List.of(
                ids.isEmpty()
                        ? JobProblem.of(at, "wrong.no-circuits", question.circuit())
                        : JobProblem.of(
                                at,
                                "wrong.not-a-circuit",
                                question.circuit(),
                                String.join(", ", ids)));
    }

    private static List<JobProblem> listNotStocked(WhatIfQuestion question, WhatIf design) {
        List<String> stocked =
                switch (question.varied()) {
                    case AMBIENT, RUN -> List.of();
                    case SIZE -> design.listSizes().stream().map(WireSize::label).toList();
                    case KIND -> design.listKinds().stream().map(DeviceKind::code).toList();
                };
        List<JobProblem> problems = new ArrayList<>();
        question.names()
                .forEach(
                        (at, name) -> {
                            if (!stocked.contains(name)) {
                                problems.add(
                                        JobProblem.of(
                                                at,
                                                "wrong.not-stocked",
                                                name,
                                                String.join(", ", stocked)));
                            }
                        });
        return problems;
    }

    /** Those that are asked for, in the order of asking. */
    private static <T> List<T> named(
            Collection<String> names, List<T> stocked, Function<T, String> nameOf) {
        return names.stream()
                .flatMap(name -> stocked.stream().filter(each -> nameOf.apply(each).equals(name)))
                .toList();
    }
}
