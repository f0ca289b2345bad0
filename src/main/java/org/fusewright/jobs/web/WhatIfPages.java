package org.fusewright.jobs.web;

import io.swagger.v3.oas.annotations.Hidden;

import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.sizing.WhatIf.Answer;
import org.fusewright.core.sizing.WhatIf.Varied;
import org.fusewright.jobs.JobReading;
import org.fusewright.jobs.Jobs;
import org.fusewright.jobs.Kits;
import org.fusewright.jobs.StoredJob;
import org.fusewright.jobs.WhatIfAnswers;
import org.fusewright.jobs.WhatIfQuestion;
import org.fusewright.jobs.load.JobReader;
import org.fusewright.web.Words;
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

import tools.jackson.databind.node.ObjectNode;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** What the job page answers to "what if", of the job as typed; nothing is kept. */
@Controller
@Hidden
class WhatIfPages {
    private static final Pattern ROW = Pattern.compile("/circuits/\\d{1,4}");
    private static final Pattern ASK = Pattern.compile("(\\w{1,20}) (" + ROW + ")");

    private final Jobs jobs;
    private final Kits kits;
    private final WhatIfAnswers answers;

    WhatIfPages(Jobs jobs, Kits kits, WhatIfAnswers answers) {
        this.jobs = jobs;
        this.kits = kits;
        this.answers = answers;
    }

    @PostMapping("/jobs/{id}/what-if")
    ModelAndView ask(
            @PathVariable long id,
            @RequestParam String ask,
            @RequestParam MultiValueMap<String, String> fields,
            @RequestHeader(name = "HX-Request", defaultValue = "false") boolean script) {
        StoredJob job = jobs.get(id);
        Matcher asked = ASK.matcher(ask);
        if (!asked.matches()) {
            throw noSuchQuestion();
        }
        String row = asked.group(2);
        Varied varied = varied(asked.group(1));
        ObjectNode document = FormDocument.of(fields);
        Renaming.follow(job.document(), document);
        try {
            WhatIfView view =
                    new WhatIfView(row, varied, Optional.of(answer(document, row, varied)));
            return page(job, view, JobForm.of(document, List.of()), HttpStatus.OK, script);
        } catch (MalformedJobException malformed) {
            WhatIfView view = new WhatIfView(row, varied, Optional.empty());
            JobForm form = JobForm.of(document, malformed.problems());
            return page(job, view, form, HttpStatus.BAD_REQUEST, script);
        }
    }

    /** The questions that can be asked of a circuit. */
    @GetMapping("/jobs/{id}/what-if")
    ModelAndView questions(@PathVariable long id, @RequestParam String row) {
        StoredJob job = jobs.get(id);
        if (!ROW.matcher(row).matches() || job.document().at(row).isMissingNode()) {
            throw noSuchQuestion();
        }
        return new ModelAndView(
                "jobs/asks",
                Map.of("job", job.id(), "row", row, "answer", Optional.<WhatIfView>empty()));
    }

    private Answer answer(ObjectNode document, String row, Varied varied) {
        JobReading reading = JobReader.read(document);
        String circuit = document.at(row + "/id").asString("");
        return answers.answer(WhatIfQuestion.usual(reading, circuit, varied));
    }

    /** With the page's script the answer alone; else the whole page, which keeps what was typed. */
    private ModelAndView page(
            StoredJob job, WhatIfView view, JobForm form, HttpStatus status, boolean script) {
        return script
                ? new ModelAndView("jobs/answered", Map.of("job", job.id(), "view", view), status)
                : new ModelAndView(
                        "jobs/job",
                        Map.of("view", JobView.of(job, this::plan).withForm(form).withWhatIf(view)),
                        status);
    }

    private Kit plan(StoredJob job) {
        return kits.plan(JobReader.read(job.document()));
    }

    private static Varied varied(String code) {
        return Stream.of(Varied.values())
                .filter(varied -> varied.code().equals(code))
                .findFirst()
                .orElseThrow(WhatIfPages::noSuchQuestion);
    }

    private static ResponseStatusException noSuchQuestion() {
        return new ResponseStatusException(HttpStatus.BAD_REQUEST, Words.say("whatif.no-question"));
    }
}
