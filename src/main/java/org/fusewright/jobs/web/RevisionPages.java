package org.fusewright.jobs.web;

import io.swagger.v3.oas.annotations.Hidden;

import jakarta.servlet.http.HttpServletResponse;

import org.fusewright.core.kit.Kit;
import org.fusewright.jobs.Jobs;
import org.fusewright.jobs.Kits;
import org.fusewright.jobs.StaleJobException;
import org.fusewright.jobs.StoredJob;
import org.fusewright.jobs.load.JobReader;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;

import java.util.Set;

/** Earlier revisions of a job on its page. */
@Controller
@Hidden
class RevisionPages {
    private final Jobs jobs;
    private final Kits kits;

    RevisionPages(Jobs jobs, Kits kits) {
        this.jobs = jobs;
        this.kits = kits;
    }

    /** Makes a new revision that says what an earlier one said. */
    @PostMapping("/jobs/{id}/restore")
    ModelAndView restore(
            @PathVariable long id,
            @RequestParam long version,
            @RequestParam int revision,
            @RequestParam(defaultValue = "") Set<String> open,
            @RequestHeader(name = "HX-Request", defaultValue = "false") boolean script,
            HttpServletResponse response) {
        try {
            StoredJob job =
                    jobs.change(
                            id, version, JobReader.read(jobs.getRevision(id, revision).document()));
            return script
                    ? JobPages.swapAll(
                            JobView.of(job, this::plan).opening(open), HttpStatus.OK, response)
                    : new ModelAndView("redirect:/jobs/" + id);
        } catch (StaleJobException stale) {
            return JobPages.stale(
                    JobView.of(jobs.get(id), this::plan).opening(open), script, response);
        }
    }

    private Kit plan(StoredJob job) {
        return kits.plan(JobReader.read(job.document()));
    }
}
