package org.fusewright.jobs.web;

import io.swagger.v3.oas.annotations.Hidden;

import org.fusewright.core.check.Subject;
import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.sizing.SizedCircuit;
import org.fusewright.core.sizing.SizedFeed;
import org.fusewright.jobs.Jobs;
import org.fusewright.jobs.Kits;
import org.fusewright.jobs.StoredJob;
import org.fusewright.jobs.load.JobReader;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.ModelAndView;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** The parts of a job's page that are fetched when somebody opens them. */
@Controller
@Hidden
class JobPieces {
    private static final Pattern ROW = Pattern.compile("/circuits/\\d{1,4}");

    private final Jobs jobs;
    private final Kits kits;

    JobPieces(Jobs jobs, Kits kits) {
        this.jobs = jobs;
        this.kits = kits;
    }

    /**
     * Why a device was chosen, and which checks pass.
     *
     * @param of "circuit:", "feed:" or "block:" and an id; "job:" for the job itself
     * @param revision the revision that is looked at; 0 for the newest
     */
    @GetMapping("/jobs/{id}/proof")
    ModelAndView proof(
            @PathVariable long id,
            @RequestParam String of,
            @RequestParam(defaultValue = "0") int revision,
            @RequestHeader(name = "HX-Request", defaultValue = "false") boolean script) {
        KitView kit = kit(id, revision);
        String name = of.substring(of.indexOf(':') + 1);
        Optional<SizedCircuit> circuit = Optional.empty();
        Optional<SizedFeed> feed = Optional.empty();
        Said said;
        switch (of.substring(0, Math.max(0, of.indexOf(':')))) {
            case "circuit" -> {
                circuit = Optional.of(kit.findCircuit(name).orElseThrow(JobPieces::gone));
                said = kit.said(Subject.Scope.CIRCUIT, name);
            }
            case "feed" -> {
                feed = Optional.of(kit.findFeed(name).orElseThrow(JobPieces::gone));
                said = kit.said(Subject.Scope.FEED, name);
            }
            case "block" -> said = kit.said(Subject.Scope.BLOCK, name);
            case "job" -> said = kit.saidOfTheRest();
            default -> throw gone();
        }
        return new ModelAndView(
                script ? "jobs/proof" : "jobs/proofpage",
                Map.of(
                        "job",
                        id,
                        "revision",
                        revision,
                        "said",
                        said,
                        "circuit",
                        circuit,
                        "feed",
                        feed));
    }

    /** The drawer of a circuit, filled with what the form says of it, which is not kept. */
    @PostMapping("/jobs/{id}/drawer")
    ModelAndView drawer(
            @PathVariable long id,
            @RequestParam String row,
            @RequestParam(defaultValue = "0") int from,
            @RequestParam(defaultValue = "") Set<String> open,
            @RequestParam MultiValueMap<String, String> fields,
            @RequestHeader(name = "HX-Request", defaultValue = "false") boolean script) {
        StoredJob job = jobs.get(id);
        ObjectNode document = FormDocument.of(fields);
        if (!ROW.matcher(row).matches() || document.at(row).isMissingNode()) {
            throw gone();
        }
        JobForm form = JobForm.of(document, problems(document)).insteadOf(kept(job, from));
        if (script) {
            return new ModelAndView(
                    "jobs/drawn",
                    Map.of("form", form, "job", id, "row", row, "whatIf", Optional.empty()));
        }
        Set<String> opened = new LinkedHashSet<>(open);
        opened.add(row);
        return new ModelAndView(
                "jobs/job",
                Map.of(
                        "view",
                        JobView.of(job, stored -> kits.plan(JobReader.read(stored.document())))
                                .withForm(form)
                                .opening(opened)));
    }

    /** What was kept when the form was made. */
    private JsonNode kept(StoredJob job, int from) {
        return from == 0 || from == job.revision()
                ? job.document()
                : jobs.getRevision(job.id(), from).document();
    }

    private List<JobProblem> problems(ObjectNode document) {
        try {
            kits.plan(JobReader.read(document));
            return List.of();
        } catch (MalformedJobException malformed) {
            return malformed.problems();
        }
    }

    /** The time-current chart and the dead shorts of a circuit. */
    @GetMapping("/jobs/{id}/chart")
    ModelAndView chart(
            @PathVariable long id,
            @RequestParam String circuit,
            @RequestParam(defaultValue = "0") int revision,
            @RequestHeader(name = "HX-Request", defaultValue = "false") boolean script) {
        SizedCircuit sized = kit(id, revision).findCircuit(circuit).orElseThrow(JobPieces::gone);
        return script
                ? new ModelAndView("jobs/chart", drawn(sized, id, revision))
                : new ModelAndView("jobs/chartpage", drawn(sized, id, revision));
    }

    private static Map<String, Object> drawn(SizedCircuit sized, long job, int revision) {
        return Map.of(
                "study",
                sized.study().orElseThrow(JobPieces::gone),
                "device",
                sized.device().orElseThrow(JobPieces::gone),
                "circuit",
                sized.id(),
                "job",
                job,
                "revision",
                revision);
    }

    private KitView kit(long id, int revision) {
        JsonNode document =
                revision == 0 ? jobs.get(id).document() : jobs.getRevision(id, revision).document();
        return new KitView(kits.plan(JobReader.read(document)));
    }

    private static ResponseStatusException gone() {
        return new ResponseStatusException(HttpStatus.NOT_FOUND);
    }
}
