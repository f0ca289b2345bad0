package org.fusewright.counts.web;

import io.swagger.v3.oas.annotations.Hidden;

import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.count.CountedKind;
import org.fusewright.core.count.ExpectedBag.Sets;
import org.fusewright.core.count.Weighing.Reading;
import org.fusewright.core.count.WeighingTerms;
import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Unit;
import org.fusewright.core.words.UnitSystem;
import org.fusewright.counts.BagCount;
import org.fusewright.counts.CountSummary;
import org.fusewright.counts.Counts;
import org.fusewright.counts.Heard;
import org.fusewright.counts.NewCount;
import org.fusewright.counts.SignedCountException;
import org.fusewright.counts.StaleCountException;
import org.fusewright.counts.Way;
import org.fusewright.counts.load.CountRequests;
import org.fusewright.counts.web.CountView.Notice;
import org.fusewright.jobs.Jobs;
import org.fusewright.web.ChangedBy;
import org.fusewright.web.Downloads;
import org.fusewright.web.Figures;
import org.fusewright.web.Typed;
import org.fusewright.web.Words;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.util.UriComponentsBuilder;

import java.math.BigDecimal;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * The pages of counts, for a phone at the bench. Each works as plain forms; with the page's script
 * what was tapped, typed or scanned goes out one after the other, and only the count is swapped.
 */
@Controller
@Hidden
class CountPages {
    private static final int PAGE_LENGTH = 50;
    private static final int LONGEST_NAME = 100;
    private static final int LONGEST_CODE = 500;
    private static final String TYPED = "typed";
    private static final String SCATTER = "scatter-";
    private static final Pattern PERCENT = Pattern.compile("\\d{1,3}([.,]\\d{0,4})?");

    private final Counts counts;
    private final Jobs jobs;

    CountPages(Counts counts, Jobs jobs) {
        this.counts = counts;
        this.jobs = jobs;
    }

    @GetMapping("/counts")
    ModelAndView list(@RequestParam(required = false) @Nullable Long before) {
        List<CountSummary> found =
                counts.list(before == null ? Long.MAX_VALUE : before, PAGE_LENGTH + 1);
        return new ModelAndView(
                "counts/list",
                Map.of(
                        "counts",
                        found.stream().limit(PAGE_LENGTH).toList(),
                        "next",
                        found.size() > PAGE_LENGTH ? found.get(PAGE_LENGTH - 1).id() : 0L));
    }

    @GetMapping("/counts/new")
    ModelAndView startPage(@RequestParam long job) {
        return startPage(job, "", HttpStatus.OK);
    }

    private ModelAndView startPage(long job, String problem, HttpStatus status) {
        return new ModelAndView(
                "counts/start",
                Map.of(
                        "job",
                        jobs.get(job),
                        "revisions",
                        jobs.listRevisions(job),
                        "counts",
                        counts.listOfJob(job),
                        "problem",
                        problem),
                status);
    }

    @PostMapping("/counts")
    ModelAndView start(
            @RequestParam long job,
            @RequestParam int revision,
            @RequestParam(defaultValue = "closed") String sets,
            @RequestParam(defaultValue = "") String by) {
        try {
            String name = name(by);
            BagCount count =
                    counts.create(
                            new NewCount(
                                    job,
                                    OptionalInt.of(revision),
                                    sets.equals("opened") ? Sets.OPENED : Sets.CLOSED,
                                    name));
            return redirect(count.id(), name);
        } catch (MalformedJobException malformed) {
            return startPage(job, inWords(malformed), HttpStatus.BAD_REQUEST);
        }
    }

    @GetMapping("/counts/{id}")
    ModelAndView show(@PathVariable long id, @RequestParam(defaultValue = "") String by) {
        return page("counts/count", view(counts.get(id), by), HttpStatus.OK);
    }

    /**
     * Pieces tapped or typed.
     *
     * @param pieces how many more, or {@code typed} to take the number that was typed
     * @param seen the number that the person saw; what others counted since is kept
     */
    @PostMapping("/counts/{id}/pieces")
    ModelAndView addPieces(
            @PathVariable long id,
            @RequestParam String part,
            @RequestParam String pieces,
            @RequestParam(defaultValue = "") String typed,
            @RequestParam(defaultValue = "0") int seen,
            @RequestParam(defaultValue = "") String by,
            @RequestHeader(name = "HX-Request", defaultValue = "false") boolean script) {
        return change(
                id,
                by,
                script,
                () -> {
                    boolean isTyped = pieces.equals(TYPED);
                    int more = isTyped ? whole("/typed", typed) - seen : whole("/pieces", pieces);
                    return view(
                            counts.add(
                                    id,
                                    part(part),
                                    more,
                                    isTyped ? Way.TYPED : Way.TAPPED,
                                    name(by)),
                            by);
                });
    }

    @PostMapping("/counts/{id}/scans")
    ModelAndView scan(
            @PathVariable long id,
            @RequestParam String code,
            @RequestParam(defaultValue = "") String by,
            @RequestHeader(name = "HX-Request", defaultValue = "false") boolean script) {
        try {
            if (code.isBlank() || code.length() > LONGEST_CODE) {
                throw refused("/code", "wrong.scan-or-type");
            }
            Counts.Scan scan = counts.scan(id, code, name(by));
            Heard heard = scan.heard();
            CountView view =
                    view(scan.count(), by)
                            .withNotice(
                                    new Notice(
                                            heard.isGood() ? "pass" : "fail",
                                            (heard.isGood() ? "✓ " : "✗ ")
                                                    + Words.say(heard.sentence())));
            return page(template(script), view, HttpStatus.OK);
        } catch (MalformedJobException | SignedCountException e) {
            return refusal(id, by, script, e);
        }
    }

    @PostMapping("/counts/{id}/substitutes")
    ModelAndView agree(
            @PathVariable long id,
            @RequestParam String wanted,
            @RequestParam String offered,
            @RequestParam int pieces,
            @RequestParam(defaultValue = "") String by,
            @RequestHeader(name = "HX-Request", defaultValue = "false") boolean script) {
        return change(
                id,
                by,
                script,
                () -> view(counts.agree(id, part(wanted), part(offered), pieces, name(by)), by));
    }

    @PostMapping("/counts/{id}/withdrawals")
    ModelAndView withdraw(
            @PathVariable long id,
            @RequestParam String wanted,
            @RequestParam String offered,
            @RequestParam(defaultValue = "") String by,
            @RequestHeader(name = "HX-Request", defaultValue = "false") boolean script) {
        return change(
                id,
                by,
                script,
                () -> view(counts.withdraw(id, part(wanted), part(offered), name(by)), by));
    }

    /** The scale's form: what it can tell, or with a reading, the weighing itself. */
    @PostMapping("/counts/{id}/weighings")
    ModelAndView weigh(
            @PathVariable long id,
            @RequestParam String resolutionG,
            @RequestParam(defaultValue = "") String tareG,
            @RequestParam(defaultValue = "") String grossG,
            @RequestParam(defaultValue = "advised") String offScale,
            @RequestParam(name = "do", defaultValue = "state") String action,
            @RequestParam(defaultValue = "") String by,
            @RequestParam(defaultValue = "") String shownIn,
            @RequestParam Map<String, String> fields,
            @RequestHeader(name = "HX-Request", defaultValue = "false") boolean script) {
        Typed.in(shownIn);
        try {
            double step =
                    grams(
                            "/resolutionG",
                            resolutionG,
                            CountRequests.LEAST_STEP_G,
                            CountRequests.MOST_STEP_G);
            WeighingTerms terms =
                    new WeighingTerms(
                            step,
                            sample(fields.getOrDefault("samplePieces", "")),
                            WeighingTerms.USUAL_ERROR,
                            scatter(fields));
            if (!action.equals("keep")) {
                BagCount count = counts.get(id);
                return page(
                        template(script),
                        view(count, by).withStatement(counts.stateWeight(count, terms)),
                        HttpStatus.OK);
            }
            double tare = tareG.isBlank() ? 0 : grams("/tareG", tareG, 0, CountRequests.MOST_G);
            double gross = grams("/grossG", grossG, 0, CountRequests.MOST_G);
            if (gross < tare) {
                throw refused("/grossG", "wrong.full-below-empty");
            }
            BagCount count =
                    counts.weigh(
                            id,
                            terms,
                            offScale.equals("none") ? Optional.of(Set.of()) : Optional.empty(),
                            new Reading(tare, gross),
                            name(by));
            return script ? page("counts/work", view(count, by), HttpStatus.OK) : redirect(id, by);
        } catch (MalformedJobException | SignedCountException e) {
            return refusal(id, by, script, e);
        }
    }

    @PostMapping("/counts/{id}/signature")
    ModelAndView sign(
            @PathVariable long id,
            @RequestParam long version,
            @RequestParam(defaultValue = "") String name,
            @RequestParam(defaultValue = "") String remark) {
        try {
            String text = remark.strip();
            if (text.length() > CountRequests.LONGEST_REMARK || isBroken(text)) {
                throw refused("/remark", "wrong.one-line-of", CountRequests.LONGEST_REMARK);
            }
            counts.sign(id, version, name(name), text);
            return redirect(id, name);
        } catch (MalformedJobException | SignedCountException | StaleCountException e) {
            return refusal(id, name, false, e);
        }
    }

    @PostMapping("/counts/{id}/delete")
    ModelAndView delete(@PathVariable long id, @RequestParam long version) {
        try {
            counts.delete(id, version);
            return new ModelAndView("redirect:/counts");
        } catch (SignedCountException | StaleCountException e) {
            return refusal(id, "", false, e);
        }
    }

    @GetMapping("/counts/{id}/record.pdf")
    ResponseEntity<byte[]> record(
            @PathVariable long id, @RequestParam(defaultValue = "a4") String paper) {
        byte[] pdf = CountApi.record(counts, id, paper);
        String name = Downloads.name(counts.get(id).design().reference(), "count " + id, "pdf");
        return Downloads.file(name, MediaType.APPLICATION_PDF, pdf);
    }

    private ModelAndView change(long id, String by, boolean script, Supplier<CountView> changing) {
        try {
            CountView view = changing.get();
            return script ? page("counts/work", view, HttpStatus.OK) : redirect(id, by);
        } catch (MalformedJobException | SignedCountException e) {
            return refusal(id, by, script, e);
        }
    }

    /** The count as it is, with what was wrong. */
    private ModelAndView refusal(long id, String by, boolean script, RuntimeException e) {
        CountView view = view(counts.get(id), by);
        return switch (e) {
            case MalformedJobException malformed ->
                    page(
                            template(script),
                            view.withNotice(new Notice("fail", "✗ " + inWords(malformed))),
                            HttpStatus.BAD_REQUEST);
            case SignedCountException _ ->
                    page(
                            template(script),
                            view.withNotice(
                                    new Notice("fail", "✗ " + Words.say("counts.is-signed"))),
                            HttpStatus.CONFLICT);
            default ->
                    page(
                            template(script),
                            view.withNotice(
                                    new Notice("caution", "! " + Words.say("counts.stale-now"))),
                            HttpStatus.PRECONDITION_FAILED);
        };
    }

    private CountView view(BagCount count, String by) {
        return CountView.of(
                count,
                count.isSigned() ? List.of() : counts.listPossibleSubstitutes(count),
                counts.findLater(count),
                by.isBlank() ? count.startedBy() : by.strip());
    }

    private static String template(boolean script) {
        return script ? "counts/work" : "counts/count";
    }

    private static ModelAndView page(String template, CountView view, HttpStatus status) {
        return new ModelAndView(template, Map.of("view", view), status);
    }

    private static ModelAndView redirect(long id, String by) {
        return new ModelAndView(
                "redirect:"
                        + UriComponentsBuilder.fromPath("/counts/" + id)
                                .queryParam("by", "{by}")
                                .encode()
                                .buildAndExpand(by.strip())
                                .toUriString());
    }

    private static String name(String by) {
        String name = ChangedBy.orGiven(by).strip();
        if (name.isEmpty() || name.length() > LONGEST_NAME || isBroken(name)) {
            throw refused("/by", "wrong.who", LONGEST_NAME);
        }
        return name;
    }

    private static boolean isBroken(String text) {
        return text.chars().anyMatch(Character::isISOControl);
    }

    private static PartNumber part(String text) {
        if (!PartNumber.isOne(text)) {
            throw refused("/part", "wrong.no-part-number");
        }
        return new PartNumber(text);
    }

    private static int whole(String pointer, String text) {
        if (!text.strip().matches("-?[0-9]{1,6}")) {
            throw refused(pointer, "wrong.no-whole-number");
        }
        return Integer.parseInt(text.strip());
    }

    private static double grams(String pointer, String text, double least, double most) {
        double value = Typed.read(text, Unit.GRAM).map(BigDecimal::doubleValue).orElse(Double.NaN);
        if (!(value >= least && value <= most)) {
            throw Words.wording().units() == UnitSystem.METRIC
                    ? refused(pointer, "wrong.grams")
                    : refused(
                            pointer,
                            "counts.ounces",
                            Figures.bare(0.1, Unit.GRAM, 2),
                            Figures.bare(152.4, Unit.GRAM, 1));
        }
        return value;
    }

    private static int sample(String text) {
        if (text.isBlank()) {
            return WeighingTerms.USUAL_SAMPLE;
        }
        int pieces = whole("/samplePieces", text);
        if (pieces < 1 || pieces > CountRequests.MOST_PIECES) {
            throw refused("/samplePieces", "wrong.sample-pieces", CountRequests.MOST_PIECES);
        }
        return pieces;
    }

    /** What was given; the usual scatter holds where nothing was. */
    private static Map<CountedKind, Double> scatter(Map<String, String> fields) {
        Map<CountedKind, Double> scatter = new EnumMap<>(CountedKind.class);
        for (CountedKind kind : CountedKind.values()) {
            String text = fields.getOrDefault(SCATTER + kind.code(), "").strip();
            if (!text.isEmpty()) {
                scatter.put(kind, percent(text, kind) / 100);
            }
        }
        return scatter;
    }

    private static double percent(String text, CountedKind kind) {
        double percent =
                PERCENT.matcher(text).matches() ? Double.parseDouble(text.replace(',', '.')) : -1;
        if (percent < 0 || percent > 100) {
            throw refused("/scatter", "wrong.scatter", Phrase.of("counted-kind." + kind.code()));
        }
        return percent;
    }

    private static MalformedJobException refused(String pointer, String key, Object... values) {
        return new MalformedJobException(List.of(JobProblem.of(pointer, key, values)));
    }

    private static String inWords(MalformedJobException malformed) {
        return malformed.problems().stream()
                .map(problem -> label(problem.pointer()) + Words.say(problem.detail()))
                .collect(Collectors.joining("; ", "", "."))
                .replace("..", ".");
    }

    private static String label(String pointer) {
        return switch (pointer) {
            case "/by", "/code", "/pieces", "/offered" -> "";
            case "/grossG" -> Words.say("counts.fault.gross") + " ";
            case "/resolutionG" -> Words.say("counts.fault.resolution") + " ";
            case "/samplePieces" -> Words.say("counts.fault.sample") + " ";
            case "/scatter" -> Words.say("counts.fault.scatter") + " ";
            case "/tareG" -> Words.say("counts.fault.tare") + " ";
            case "/typed" -> Words.say("counts.fault.typed") + " ";
            default -> pointer.isEmpty() ? "" : pointer.substring(1) + ": ";
        };
    }
}
