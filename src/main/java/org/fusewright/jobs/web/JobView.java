package org.fusewright.jobs.web;

import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Subject;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.fusewright.jobs.JobDifference;
import org.fusewright.jobs.StoredJob;
import org.fusewright.web.HeldParts;
import org.fusewright.web.Words;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;

/**
 * What the page of one job shows.
 *
 * @param kit empty when the catalog of today has no kit for the job; the form says why
 * @param notice what the user must know first; empty for nothing
 * @param refreshed fields whose faults are sent anew
 * @param whatIf the answer to what was asked of a circuit
 * @param wishes what was read from a customer's text and waits to be confirmed
 * @param opened rows of circuits whose drawers are filled
 * @param edit what came of the change that is answered
 * @param lookedAt whether it is an earlier revision, to look at only
 * @param held the parts of the page that the browser holds
 */
public record JobView(
        StoredJob job,
        JobForm form,
        Optional<KitView> kit,
        String notice,
        Set<String> refreshed,
        Optional<WhatIfView> whatIf,
        Optional<WishesView> wishes,
        Set<String> opened,
        EditOutcome edit,
        boolean lookedAt,
        HeldParts held) {
    private static final Said NOTHING = new Said(List.of());
    private static final List<String> SHOWN =
            List.of(
                    "title",
                    "loads",
                    "runM",
                    "feed",
                    "location",
                    "terminal",
                    "lengthM",
                    "sourceDistanceM",
                    "diversity");
    private static final List<String> SHOWN_OF_FIRST_LOAD =
            List.of("kind", "count", "watts", "amps");
    private static final List<String> SHOWN_OF_LOAD =
            List.of("title", "kind", "count", "watts", "amps", "branchM");

    public JobView {
        refreshed = new LinkedHashSet<>(refreshed);
        opened = Set.copyOf(opened);
    }

    static JobView of(StoredJob job, Function<StoredJob, Kit> planner) {
        try {
            return of(job, planner.apply(job));
        } catch (MalformedJobException malformed) {
            return new JobView(
                    job,
                    JobForm.of(job.document(), malformed.problems()),
                    Optional.empty(),
                    "",
                    Set.of(),
                    Optional.empty(),
                    Optional.empty(),
                    Set.of(),
                    EditOutcome.NOTHING,
                    false,
                    HeldParts.none());
        }
    }

    static JobView of(StoredJob job, Kit kit) {
        return new JobView(
                job,
                JobForm.of(job.document(), List.of()),
                Optional.of(new KitView(kit)),
                "",
                Set.of(),
                Optional.empty(),
                Optional.empty(),
                Set.of(),
                EditOutcome.NOTHING,
                false,
                HeldParts.none());
    }

    JobView withForm(JobForm typed) {
        return new JobView(
                job, typed, kit, notice, refreshed, whatIf, wishes, opened, edit, lookedAt, held);
    }

    JobView withNotice(String text) {
        return new JobView(
                job, form, kit, text, refreshed, whatIf, wishes, opened, edit, lookedAt, held);
    }

    JobView refreshing(Set<String> fields) {
        return new JobView(
                job, form, kit, notice, fields, whatIf, wishes, opened, edit, lookedAt, held);
    }

    JobView withWhatIf(WhatIfView answer) {
        return new JobView(
                job,
                form,
                kit,
                notice,
                refreshed,
                Optional.of(answer),
                wishes,
                opened,
                edit,
                lookedAt,
                held);
    }

    JobView withWishes(WishesView read) {
        return new JobView(
                job,
                form,
                kit,
                notice,
                refreshed,
                whatIf,
                Optional.of(read),
                opened,
                edit,
                lookedAt,
                held);
    }

    JobView opening(Collection<String> rows) {
        return new JobView(
                job,
                form,
                kit,
                notice,
                refreshed,
                whatIf,
                wishes,
                new LinkedHashSet<>(rows),
                edit,
                lookedAt,
                held);
    }

    JobView withEdit(EditOutcome outcome) {
        return new JobView(
                job, form, kit, notice, refreshed, whatIf, wishes, opened, outcome, lookedAt, held);
    }

    JobView holding(String digests) {
        return new JobView(
                job,
                form,
                kit,
                notice,
                refreshed,
                whatIf,
                wishes,
                opened,
                edit,
                lookedAt,
                HeldParts.of(digests));
    }

    JobView toLookAt() {
        return new JobView(
                job, form, kit, notice, refreshed, whatIf, wishes, opened, edit, true, held);
    }

    /** The revision that is looked at; 0 where it is the job as it stands. */
    public int asked() {
        return lookedAt ? job.revision() : 0;
    }

    /** Where the proof of something on the page is, such as "circuit:pump". */
    public String proof(String of) {
        return "/jobs/"
                + job.id()
                + "/proof?of="
                + of
                + (lookedAt ? "&revision=" + job.revision() : "");
    }

    /** Whether a field's fault has a place on the page as it stands. */
    public boolean isShown(String field) {
        return !form.isOfDrawer(field)
                || opened.stream().anyMatch(row -> field.startsWith(row + "/"));
    }

    /**
     * What is wrong in drawers that were not filled yet, by circuits whose faults are sent anew.
     */
    public Map<String, String> drawerFaults() {
        Map<String, String> faults = new TreeMap<>();
        for (String field : refreshed) {
            if (form.isOfDrawer(field)) {
                String fault = isShown(field) ? "" : form.fault(field);
                faults.merge(JobForm.circuitOf(field), fault, (a, b) -> a.isEmpty() ? b : a);
            }
        }
        return faults;
    }

    /** Whether a field is on the page, be it in a drawer that was not filled yet. */
    public boolean isSent(String field) {
        return isShown(field) || !form.text(field).isEmpty();
    }

    /** What a row of a circuit or feed says beyond its line, in words. */
    public List<String> more(String row) {
        ObjectNode rest = (ObjectNode) job.document().at(row).deepCopy();
        if (rest.path("title").asString("").isEmpty()) {
            rest.remove("id"); // stands in the line then
        }
        JsonNode loads = rest.path("loads");
        rest.remove(SHOWN);
        List<String> words = new ArrayList<>(words(rest));
        for (int i = 0; i < loads.size(); i++) {
            ObjectNode load = (ObjectNode) loads.get(i);
            load.remove(i == 0 ? SHOWN_OF_FIRST_LOAD : SHOWN_OF_LOAD);
            for (String word : words(load)) {
                Text of = Phrase.of("change-of.loads", String.valueOf(i + 1));
                words.add(
                        loads.size() > 1 ? Words.say("change.of", of, Text.verbatim(word)) : word);
            }
        }
        return words;
    }

    /** What the document says of machine, places and choices, in words. */
    public List<String> machine() {
        ObjectNode rest = (ObjectNode) job.document().deepCopy();
        rest.remove(List.of("reference", "title", "customer", "feeds", "circuits", "locations"));
        List<String> words = new ArrayList<>(words(rest));
        job.document()
                .path("locations")
                .forEach(place -> words.add(String.join(", ", words(place))));
        return words;
    }

    private static List<String> words(JsonNode fields) {
        return JobDifference.listValues(fields).stream()
                .map(
                        value ->
                                Words.say(
                                        "change.value",
                                        value.field().orElseThrow(),
                                        value.after().orElseThrow()))
                .toList();
    }

    /** What the checks say of the circuit or feed in a row. */
    public Said said(String row) {
        return kit.map(view -> view.said(scope(row), id(row))).orElse(NOTHING);
    }

    /** The device chosen for the circuit or feed in a row; empty when there is none. */
    public String device(String row) {
        return kit.map(
                        view ->
                                scope(row) == Subject.Scope.FEED
                                        ? view.deviceOfFeed(id(row))
                                        : view.deviceOfCircuit(id(row)))
                .orElse("");
    }

    /** The figure that explains the rating of that device: the check of the load on it. */
    public Optional<String> whyDevice(String row) {
        return said(row).checks().stream()
                .filter(
                        check ->
                                check.code() == CheckCode.RUNNING_LOAD
                                        || check.code() == CheckCode.FEED_LOAD)
                .findFirst()
                .map(WhyView::of);
    }

    /** What a row is called wherever things that belong together are lit: "circuit:pump". */
    public String token(String row) {
        return scope(row) == Subject.Scope.FEED
                ? Belonging.feed(id(row))
                : Belonging.circuit(id(row));
    }

    private String id(String row) {
        return form.text(row + "/id");
    }

    private static Subject.Scope scope(String row) {
        return row.startsWith("/feeds/") ? Subject.Scope.FEED : Subject.Scope.CIRCUIT;
    }
}
