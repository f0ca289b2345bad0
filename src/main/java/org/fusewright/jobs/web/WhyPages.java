package org.fusewright.jobs.web;

import io.swagger.v3.oas.annotations.Hidden;

import org.fusewright.core.why.Explanation;
import org.fusewright.core.why.Why;
import org.fusewright.jobs.Jobs;
import org.fusewright.jobs.Kits;
import org.fusewright.jobs.load.JobReader;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.ModelAndView;

import tools.jackson.databind.JsonNode;

import java.util.Map;

/** Why a figure on the page of a job is what it is; worked out when somebody asks. */
@Controller
@Hidden
class WhyPages {

    private final Jobs jobs;
    private final Kits kits;

    WhyPages(Jobs jobs, Kits kits) {
        this.jobs = jobs;
        this.kits = kits;
    }

    /**
     * @param of the figure's name, as {@link Why} has it
     * @param revision the revision that is looked at; 0 for the newest
     */
    @GetMapping("/jobs/{id}/why")
    ModelAndView why(
            @PathVariable long id,
            @RequestParam String of,
            @RequestParam(defaultValue = "0") int revision,
            @RequestHeader(name = "HX-Request", defaultValue = "false") boolean script) {
        JsonNode document =
                revision == 0 ? jobs.get(id).document() : jobs.getRevision(id, revision).document();
        Explanation why =
                Why.find(kits.plan(JobReader.read(document)), of)
                        .orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND));
        return new ModelAndView(
                script ? "jobs/why" : "jobs/whypage",
                Map.of("why", why, "job", id, "revision", revision));
    }
}
