package org.fusewright.jobs.web;

import io.swagger.v3.oas.annotations.Hidden;

import jakarta.servlet.http.HttpServletResponse;

import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.quantity.WireSize;
import org.fusewright.core.words.Text;
import org.fusewright.core.words.UnitSystem;
import org.fusewright.jobs.JobReading;
import org.fusewright.jobs.Jobs;
import org.fusewright.jobs.Kits;
import org.fusewright.jobs.ReferenceTakenException;
import org.fusewright.jobs.StaleJobException;
import org.fusewright.jobs.StoredJob;
import org.fusewright.jobs.load.JobReader;
import org.fusewright.web.ChangedBy;
import org.fusewright.web.Downloads;
import org.fusewright.web.Words;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.util.MultiValueMap;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.servlet.ModelAndView;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The pages of jobs. Each works as a plain form; with the page's script a change swaps only what it
 * moves.
 */
@Controller
@Hidden
class JobPages {
    private static final int PAGE_LENGTH = 50;

    private final Jobs jobs;
    private final Kits kits;
    private final JobEdits edits;
    private final StoppedEdits stopped;

    JobPages(Jobs jobs, Kits kits, JobEdits edits, StoppedEdits stopped) {
        this.jobs = jobs;
        this.kits = kits;
        this.edits = edits;
        this.stopped = stopped;
    }

    @GetMapping("/")
    String start() {
        return "redirect:/jobs";
    }

    @GetMapping("/jobs")
    ModelAndView list(
            @RequestParam(defaultValue = "") String q,
            @RequestParam(required = false) @Nullable Long after) {
        return listPage(q, after, JobForm.of(NewJob.usual(), List.of()), HttpStatus.OK);
    }

    @PostMapping("/jobs")
    ModelAndView create(@RequestParam MultiValueMap<String, String> fields, ChangedBy by) {
        ObjectNode document = NewJob.of(FormDocument.of(fields), usualWires());
        try {
            JobReading reading = JobReader.read(document);
            kits.plan(reading);
            return redirect(jobs.create(reading, by.name()).id());
        } catch (MalformedJobException malformed) {
            return listPage(
                    "", null, JobForm.of(document, malformed.problems()), HttpStatus.BAD_REQUEST);
        } catch (ReferenceTakenException taken) {
            return listPage(
                    "",
                    null,
                    JobForm.of(document, List.of(JobErrors.problem(taken))),
                    HttpStatus.CONFLICT);
        }
    }

    /** Who reads inches most likely buys gauges. */
    private Optional<String> usualWires() {
        return Words.wording().units() == UnitSystem.IMPERIAL
                ? kits.findWireFamily(WireSize.Standard.AWG)
                : Optional.empty();
    }

    @GetMapping("/jobs/{id}")
    ModelAndView show(
            @PathVariable long id,
            @RequestParam(defaultValue = "0") int restored,
            @RequestParam(defaultValue = "0") int as) {
        StoredJob job = jobs.get(id);
        JobView view = JobView.of(job, this::plan);
        return jobPage(
                "jobs/job",
                restored > 0 && as == job.revision() ? restored(view, restored) : view,
                HttpStatus.OK);
    }

    private static JobView restored(JobView view, int revision) {
        int made = view.job().revision();
        return view.withNotice(Words.say("messages.restored", revision, made))
                .withEdit(new EditOutcome(OptionalInt.of(made), List.of(), List.of()));
    }

    /**
     * The page's form: all of the job or only some fields of it, and perhaps a row to add or
     * remove.
     *
     * @param from the revision that the form shows
     * @param part whether only those fields are sent that were changed
     * @param name what the page calls this change, should it be stopped
     * @param held the parts that the page holds, see {@link org.fusewright.web.HeldParts}
     */
    @PostMapping("/jobs/{id}")
    ModelAndView change(
            @PathVariable long id,
            @RequestParam int from,
            @RequestParam(defaultValue = "false") boolean part,
            @RequestParam(name = "do", defaultValue = "") String action,
            @RequestParam(name = "edit", defaultValue = "") String name,
            @RequestParam(defaultValue = "") String faulty,
            @RequestParam(defaultValue = "") Set<String> open,
            @RequestParam(defaultValue = "") String held,
            @RequestParam MultiValueMap<String, String> fields,
            @RequestHeader(name = "HX-Request", defaultValue = "false") boolean script,
            ChangedBy by,
            HttpServletResponse response) {
        List<Text> leftOver = new ArrayList<>();
        AtomicBoolean renamed = new AtomicBoolean();
        UnaryOperator<JsonNode> makes =
                base -> {
                    leftOver.clear();
                    ObjectNode document =
                            part
                                    ? FormDocument.change(base, fields)
                                    : FormDocument.of(withRows(action, fields, leftOver));
                    if (!action.isEmpty() && !isWholeRows(action)) {
                        FormAction.apply(action, document);
                    }
                    CircuitNames.follow(base, document);
                    renamed.set(Renaming.follow(base, document));
                    return document;
                };
        try {
            JobEdits.Kept kept = edits.keep(id, new JobEdits.Edit(from, makes, by.name(), name));
            JobView view = view(kept).withNotice(told(leftOver)).opening(open);
            if (script) {
                view = view.holding(held);
            } else {
                return leftOver.isEmpty() && !kept.isJoined()
                        ? redirect(id)
                        : jobPage("jobs/job", view, HttpStatus.OK);
            }
            return action.isEmpty() && !kept.isJoined()
                    ? jobPage("jobs/changed", view.refreshing(fieldsOf(faulty)), HttpStatus.OK)
                            .addObject("renamed", renamed.get())
                    : swapAll(view, HttpStatus.OK, response);
        } catch (RejectedEditException rejected) {
            StoredJob job = jobs.get(id);
            JobForm form =
                    JobForm.of(rejected.document(), rejected.problems()).insteadOf(job.document());
            JobView view =
                    JobView.of(job, this::plan)
                            .withForm(form)
                            .withNotice(told(leftOver))
                            .opening(open);
            return script && isWholeRows(action)
                    ? swapAll(view, rejected.status(), response)
                    : faulty(view, rejected.status(), fieldsOf(faulty), script, response);
        }
    }

    /** Gives up a change that is not kept yet. */
    @PostMapping("/jobs/{id}/stop")
    @ResponseStatus(HttpStatus.NO_CONTENT)
    void stop(@PathVariable long id, @RequestParam String edit) {
        stopped.stop(edit);
    }

    /** Takes back what one revision changed, whatever others changed since. */
    @PostMapping("/jobs/{id}/undo")
    ModelAndView undo(
            @PathVariable long id,
            @RequestParam int made,
            @RequestParam(defaultValue = "") Set<String> open,
            @RequestParam(defaultValue = "") String held,
            @RequestHeader(name = "HX-Request", defaultValue = "false") boolean script,
            ChangedBy by,
            HttpServletResponse response) {
        JobView view;
        try {
            JobEdits.Kept kept = edits.undo(id, made, by.name());
            view =
                    view(kept)
                            .withEdit(new EditOutcome(kept.outcome().made(), List.of(), List.of()))
                            .withNotice(notUndone(kept.outcome().clashes()));
        } catch (RejectedEditException rejected) {
            view =
                    JobView.of(jobs.get(id), this::plan)
                            .withNotice(
                                    Words.say(
                                            "messages.not-undone-because",
                                            Text.clauses(
                                                    rejected.problems().stream()
                                                            .map(JobProblem::detail)
                                                            .toList())));
        }
        return script
                ? swapAll(view.opening(open).holding(held), HttpStatus.OK, response)
                : jobPage("jobs/job", view, HttpStatus.OK);
    }

    private static String notUndone(List<EditOutcome.Clash> clashes) {
        return clashes.stream()
                .map(
                        clash ->
                                Words.say(
                                        "messages.not-undone",
                                        clash.what().about(),
                                        clash.by(),
                                        clash.when()))
                .collect(Collectors.joining(" "));
    }

    /** The job as it is by now, for a page that shows an earlier revision. */
    @GetMapping("/jobs/{id}/now")
    ModelAndView now(
            @PathVariable long id,
            @RequestParam int from,
            @RequestParam(defaultValue = "") Set<String> open,
            HttpServletResponse response) {
        StoredJob job = jobs.get(id);
        JobView view =
                JobView.of(job, this::plan)
                        .withEdit(
                                new EditOutcome(
                                        OptionalInt.empty(), edits.tellSince(job, from), List.of()))
                        .opening(open);
        return swapAll(view, HttpStatus.OK, response);
    }

    private static JobView view(JobEdits.Kept kept) {
        return JobView.of(kept.job(), kept.kit()).withEdit(kept.outcome());
    }

    private static boolean isWholeRows(String action) {
        return action.equals(FormRows.PASTE) || action.equals(FormRows.TAKE);
    }

    private static MultiValueMap<String, String> withRows(
            String action, MultiValueMap<String, String> fields, List<Text> leftOver) {
        return switch (action) {
            case FormRows.PASTE -> FormRows.paste(fields, leftOver);
            case FormRows.TAKE -> FormRows.take(fields);
            default -> fields;
        };
    }

    private static String told(List<Text> leftOver) {
        return leftOver.isEmpty() ? "" : Words.say("pasted.left-out", Text.listed(leftOver));
    }

    /** Reads a customer's text into rows to confirm; nothing is kept. */
    @PostMapping("/jobs/{id}/read-text")
    ModelAndView readText(
            @PathVariable long id,
            @RequestParam(defaultValue = "") String text,
            @RequestParam MultiValueMap<String, String> fields,
            @RequestHeader(name = "HX-Request", defaultValue = "false") boolean script) {
        ObjectNode typed = FormDocument.of(fields);
        JobView view =
                JobView.of(jobs.get(id), this::plan)
                        .withForm(JobForm.of(typed, List.of()))
                        .withWishes(WishesView.of(text));
        return jobPage(script ? "jobs/wishrows" : "jobs/job", view, HttpStatus.OK);
    }

    /** What was typed, with its problems beside it; the kit is that of the job as it still is. */
    private static ModelAndView faulty(
            JobView view,
            HttpStatus status,
            Set<String> faultyBefore,
            boolean script,
            HttpServletResponse response) {
        if (!script) {
            return jobPage("jobs/job", view, status);
        }
        Set<String> refreshed = new LinkedHashSet<>(faultyBefore);
        refreshed.addAll(view.form().faultyFields());
        response.setHeader("HX-Reswap", "none");
        return jobPage("jobs/faults", view.refreshing(refreshed), status);
    }

    /** Has the script swap the form too, not only the kit. */
    private static ModelAndView swapAll(
            JobView view, HttpStatus status, HttpServletResponse response) {
        response.setHeader("HX-Retarget", "#work");
        response.setHeader("HX-Reswap", "moved");
        return jobPage("jobs/anew", view, status);
    }

    @PostMapping("/jobs/{id}/delete")
    ModelAndView delete(@PathVariable long id, @RequestParam long version) {
        try {
            jobs.delete(id, version);
            return new ModelAndView("redirect:/jobs");
        } catch (StaleJobException stale) {
            return jobPage(
                    "jobs/job",
                    JobView.of(jobs.get(id), this::plan).withNotice(Words.say("job.stale-now")),
                    HttpStatus.PRECONDITION_FAILED);
        }
    }

    @GetMapping("/jobs/{id}/papers/{name}.pdf")
    ResponseEntity<byte[]> paper(
            @PathVariable long id,
            @PathVariable String name,
            @RequestParam(defaultValue = AskedPaper.USUAL_SHEET) String paper) {
        StoredJob job = jobs.get(id);
        return BenchPaperAnswer.of(name, AskedPaper.ofReader(paper))
                .with(plan(job), OptionalInt.of(job.revision()));
    }

    @GetMapping("/jobs/{id}/parts.csv")
    ResponseEntity<byte[]> partsList(@PathVariable long id) {
        return download(id, KitPapers.CSV, "parts", "csv");
    }

    @GetMapping("/jobs/{id}/kit.json")
    ResponseEntity<byte[]> kitDocument(@PathVariable long id) {
        return download(id, KitPapers.JSON, "kit", "json");
    }

    private ResponseEntity<byte[]> download(long id, KitPapers form, String what, String ending) {
        StoredJob job = jobs.get(id);
        return Downloads.file(
                Downloads.name(job.reference(), what, ending),
                form.type(),
                form.print(
                        plan(job),
                        OptionalInt.of(job.revision()),
                        AskedPaper.ofReader(AskedPaper.USUAL_SHEET)));
    }

    private Kit plan(StoredJob job) {
        return kits.plan(JobReader.read(job.document()));
    }

    private static ModelAndView jobPage(String page, JobView view, HttpStatus status) {
        return new ModelAndView(page, Map.of("view", view), status);
    }

    private ModelAndView listPage(
            String text, @Nullable Long after, JobForm form, HttpStatus status) {
        return new ModelAndView(
                "jobs/list",
                Map.of(
                        "page",
                        jobs.list(
                                text,
                                after == null ? OptionalLong.empty() : OptionalLong.of(after),
                                PAGE_LENGTH),
                        "text",
                        text,
                        "form",
                        form),
                status);
    }

    private static ModelAndView redirect(long id) {
        return new ModelAndView("redirect:/jobs/" + id);
    }

    private static Set<String> fieldsOf(String faulty) {
        Set<String> fields = new LinkedHashSet<>();
        Stream.of(faulty.split(" ")).filter(field -> field.startsWith("/")).forEach(fields::add);
        return fields;
    }
}
