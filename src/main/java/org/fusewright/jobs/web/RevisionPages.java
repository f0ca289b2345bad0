package org.fusewright.jobs.web;

import io.swagger.v3.oas.annotations.Hidden;

import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.words.Text;
import org.fusewright.jobs.Jobs;
import org.fusewright.jobs.Kits;
import org.fusewright.jobs.StaleJobException;
import org.fusewright.jobs.StoredJob;
import org.fusewright.jobs.load.JobReader;
import org.fusewright.web.ChangedBy;
import org.fusewright.web.Words;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;

import java.util.List;
import java.util.Map;

/** The revisions of a job: a list of them, each to look at, two beside each other. */
@Controller
@Hidden
class RevisionPages {
    private static final int PAGE_LENGTH = 50;
    private final Jobs jobs;
    private final Kits kits;
    private final Revisions revisions;

    RevisionPages(Jobs jobs, Kits kits, Revisions revisions) {
        this.jobs = jobs;
        this.kits = kits;
        this.revisions = revisions;
    }

    /** The newest first. */
    @GetMapping("/jobs/{id}/revisions")
    ModelAndView list(@PathVariable long id, @RequestParam(defaultValue = "2147483647") int upTo) {
        return listPage(id, upTo, "", HttpStatus.OK);
    }

    private ModelAndView listPage(long id, int upTo, String notice, HttpStatus status) {
        StoredJob job = jobs.get(id);
        List<RevisionsView.Line> lines =
                revisions.list(id, upTo, PAGE_LENGTH).stream().map(RevisionsView::line).toList();
        return new ModelAndView(
                "jobs/revisions", Map.of("view", new RevisionsView(job, lines, notice)), status);
    }

    /** The job as it was, with the kit that it would have today; nothing can be changed on it. */
    @GetMapping("/jobs/{id}/revisions/{revision}")
    ModelAndView show(@PathVariable long id, @PathVariable int revision) {
        StoredJob job = jobs.get(id);
        StoredJob then = revisions.jobAt(job, jobs.getRevision(id, revision));
        return new ModelAndView(
                "jobs/revision",
                Map.of(
                        "view",
                        JobView.of(then, this::plan).toLookAt(),
                        "newest",
                        job.revision(),
                        "changes",
                        RevisionsView.line(revisions.list(id, revision, 1).getFirst()).changes()));
    }

    @GetMapping("/jobs/{id}/comparison")
    ModelAndView compare(@PathVariable long id, @RequestParam int from, @RequestParam int to) {
        return new ModelAndView(
                "jobs/comparison",
                Map.of("job", jobs.get(id), "view", revisions.compare(id, from, to)));
    }

    /** Makes a new revision that says what an earlier one said. */
    @PostMapping("/jobs/{id}/restore")
    ModelAndView restore(
            @PathVariable long id,
            @RequestParam long version,
            @RequestParam int revision,
            ChangedBy by) {
        try {
            StoredJob job = revisions.restore(id, revision, version, by.name());
            return new ModelAndView(
                    "redirect:/jobs/" + id + "?restored=" + revision + "&as=" + job.revision());
        } catch (StaleJobException stale) {
            return listPage(
                    id,
                    Integer.MAX_VALUE,
                    Words.say("revisions.stale"),
                    HttpStatus.PRECONDITION_FAILED);
        } catch (MalformedJobException notOfThisCatalog) {
            return listPage(
                    id,
                    Integer.MAX_VALUE,
                    Words.say(
                            "revisions.not-restored",
                            revision,
                            Text.clauses(
                                    notOfThisCatalog.problems().stream()
                                            .map(JobProblem::detail)
                                            .toList())),
                    HttpStatus.BAD_REQUEST);
        }
    }

    private Kit plan(StoredJob job) {
        return kits.plan(JobReader.read(job.document()));
    }
}
