package org.fusewright.jobs.web;

import io.swagger.v3.oas.annotations.Hidden;

import org.fusewright.core.job.ArrangementKind;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.jobs.JobReading;
import org.fusewright.jobs.Jobs;
import org.fusewright.jobs.Kits;
import org.fusewright.jobs.StoredJob;
import org.fusewright.jobs.load.JobReader;
import org.fusewright.web.ChangedBy;
import org.fusewright.web.Words;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.ModelAndView;

import tools.jackson.databind.node.ObjectNode;

import java.util.List;
import java.util.Map;

/** Comparing the arrangements of a job's blocks, picking one, and keeping its places. */
@Controller
@Hidden
class ArrangementPages {
    private final Jobs jobs;
    private final Kits kits;

    ArrangementPages(Jobs jobs, Kits kits) {
        this.jobs = jobs;
        this.kits = kits;
    }

    /** A page of its own; to the job page's script only what belongs into it. */
    @GetMapping("/jobs/{id}/arrangements")
    ModelAndView compare(
            @PathVariable long id,
            @RequestHeader(name = "HX-Request", defaultValue = "false") boolean script) {
        StoredJob job = jobs.get(id);
        ArrangementsView view;
        try {
            view = new ArrangementsView(job, kits.listArrangements(JobReader.read(job.document())));
        } catch (MalformedJobException noKit) {
            view = new ArrangementsView(job, List.of());
        }
        return new ModelAndView(
                script ? "jobs/arrangements" : "jobs/arrangementspage", Map.of("view", view));
    }

    @PostMapping("/jobs/{id}/arrangement")
    String pick(
            @PathVariable long id,
            @RequestParam long version,
            @RequestParam String kind,
            ChangedBy by) {
        ArrangementKind picked =
                ArrangementKind.parse(kind)
                        .orElseThrow(
                                () ->
                                        new ResponseStatusException(
                                                HttpStatus.BAD_REQUEST,
                                                Words.say("arrangements.no-such")));
        ObjectNode document = (ObjectNode) jobs.get(id).document().deepCopy();
        ObjectNode choices =
                document.get("choices") instanceof ObjectNode given
                        ? given
                        : document.putObject("choices");
        choices.put("arrangement", picked.code());
        return keep(id, version, document, by);
    }

    @PostMapping("/jobs/{id}/wired")
    String keepPlaces(@PathVariable long id, @RequestParam long version, ChangedBy by) {
        StoredJob job = jobs.get(id);
        return keep(
                id,
                version,
                WiredPlaces.write(job.document(), kits.plan(JobReader.read(job.document()))),
                by);
    }

    private String keep(long id, long version, ObjectNode document, ChangedBy by) {
        JobReading reading = JobReader.read(document);
        kits.plan(reading);
        jobs.change(id, version, reading, by.name());
        return "redirect:/jobs/" + id;
    }
}
