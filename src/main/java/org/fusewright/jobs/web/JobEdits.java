package org.fusewright.jobs.web;

import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.fusewright.jobs.JobChange;
import org.fusewright.jobs.JobClash;
import org.fusewright.jobs.JobDifference;
import org.fusewright.jobs.JobMerge;
import org.fusewright.jobs.JobReading;
import org.fusewright.jobs.JobRevision;
import org.fusewright.jobs.Jobs;
import org.fusewright.jobs.Kits;
import org.fusewright.jobs.ReferenceTakenException;
import org.fusewright.jobs.StaleJobException;
import org.fusewright.jobs.StoredJob;
import org.fusewright.jobs.load.JobReader;
import org.fusewright.web.Figures;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;

import tools.jackson.databind.JsonNode;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.function.UnaryOperator;

/** Keeps changes of a job that others change at the same time. */
@Component
class JobEdits {
    /** How often it is tried again when somebody was quicker. */
    private static final int MOST_ATTEMPTS = 5;

    /** How many revisions of others are told of. */
    private static final int MOST_TOLD = 50;

    private static final int MOST_CHANGES = 6;

    private final Jobs jobs;
    private final Kits kits;
    private final StoppedEdits stopped;

    JobEdits(Jobs jobs, Kits kits, StoppedEdits stopped) {
        this.jobs = jobs;
        this.kits = kits;
        this.stopped = stopped;
    }

    /**
     * A change to keep.
     *
     * @param from the revision that it starts from
     * @param makes the new document of the one of that revision
     * @param by who makes it
     * @param name by which it can be stopped; empty for none
     */
    record Edit(int from, UnaryOperator<JsonNode> makes, String by, String name) {}

    /** The job after a change. */
    record Kept(StoredJob job, Kit kit, EditOutcome outcome) {
        /** Whether it says more than the change alone. */
        boolean isJoined() {
            return !outcome.meanwhile().isEmpty() || !outcome.clashes().isEmpty();
        }
    }

    /**
     * Keeps a change, joined with what others changed since the revision that it starts from.
     *
     * @throws RejectedEditException when the job would be wrong
     * @throws StoppedEditException when it was stopped meanwhile
     * @throws org.fusewright.jobs.UnknownJobException when there is no such job or revision
     */
    Kept keep(long id, Edit edit) {
        for (int attempt = 1; ; attempt++) {
            StoredJob now = jobs.get(id);
            try {
                if (edit.from() == now.revision()) {
                    JsonNode document = edit.makes().apply(now.document());
                    return keep(now, document, List.of(), List.of(), edit);
                }
                JsonNode base = jobs.getRevision(id, edit.from()).document();
                JobMerge.Joined joined =
                        JobMerge.join(base, edit.makes().apply(base), now.document());
                List<JobRevision> since = listSince(now, edit.from());
                return keep(now, joined.document(), joined.clashes(), since, edit);
            } catch (StaleJobException quicker) {
                if (attempt == MOST_ATTEMPTS) {
                    throw quicker;
                }
            }
        }
    }

    /**
     * Takes back what one revision changed, and nothing that came after it.
     *
     * @param made the revision to take back
     * @return with a clash for each thing that was changed again since, which stays
     */
    Kept undo(long id, int made, String by) {
        JsonNode before = jobs.getRevision(id, Math.max(1, made - 1)).document();
        return keep(id, new Edit(made, document -> before, by, ""));
    }

    private Kept keep(
            StoredJob now,
            JsonNode document,
            List<JobClash> clashes,
            List<JobRevision> since,
            Edit edit) {
        JobReading reading = JobReader.read(document);
        try {
            Kit kit = kits.plan(reading);
            boolean same = JobReader.read(now.document()).job().equals(reading.job());
            if (stopped.isStopped(edit.name())) {
                throw new StoppedEditException();
            }
            StoredJob kept = same ? now : jobs.change(now.id(), now.version(), reading, edit.by());
            EditOutcome outcome =
                    new EditOutcome(
                            same ? OptionalInt.empty() : OptionalInt.of(kept.revision()),
                            tell(since),
                            clashes.stream().map(clash -> told(clash, now, since)).toList());
            return new Kept(kept, kit, outcome);
        } catch (MalformedJobException malformed) {
            throw new RejectedEditException(document, malformed.problems(), HttpStatus.BAD_REQUEST);
        } catch (ReferenceTakenException taken) {
            throw new RejectedEditException(
                    document, List.of(JobErrors.problem(taken)), HttpStatus.CONFLICT);
        }
    }

    /** What others changed of a job since a revision, in sentences. */
    List<Text> tellSince(StoredJob now, int from) {
        return from < now.revision() ? tell(listSince(now, from)) : List.of();
    }

    /** The revision itself and those after it, the newest first. */
    private List<JobRevision> listSince(StoredJob now, int from) {
        int limit = Math.clamp(now.revision() - from + 1L, 1, MOST_TOLD);
        return jobs.listRevisions(now.id(), now.revision(), limit);
    }

    private static List<Text> tell(List<JobRevision> since) {
        List<Text> told = new ArrayList<>();
        for (int i = since.size() - 2; i >= 0; i--) {
            List<Text> changes = changes(since.get(i + 1), since.get(i));
            if (!changes.isEmpty()) {
                told.add(
                        Phrase.of(
                                "messages.meanwhile",
                                since.get(i).changedBy(),
                                shortened(changes)));
            }
        }
        return told;
    }

    private static List<Text> changes(JobRevision before, JobRevision after) {
        return JobDifference.list(before.document(), after.document()).stream()
                .map(JobChange::says)
                .toList();
    }

    private static Text shortened(List<Text> changes) {
        Text first = Text.clauses(changes.stream().limit(MOST_CHANGES).toList());
        int more = changes.size() - MOST_CHANGES;
        return more > 0 ? Phrase.of("messages.and-more", first, more) : first;
    }

    /** With who made what stands: the last one who changed the same thing. */
    private static EditOutcome.Clash told(JobClash clash, StoredJob now, List<JobRevision> since) {
        for (int i = 0; i + 1 < since.size(); i++) {
            boolean changedIt =
                    JobDifference.list(since.get(i + 1).document(), since.get(i).document())
                            .stream()
                            .anyMatch(change -> isOf(clash, change));
            if (changedIt) {
                return new EditOutcome.Clash(
                        clash, since.get(i).changedBy(), Figures.time(since.get(i).changedAt()));
            }
        }
        return new EditOutcome.Clash(clash, now.changedBy(), Figures.time(now.changedAt()));
    }

    private static boolean isOf(JobClash clash, JobChange change) {
        int length = clash.subject().size();
        return clash.field().isEmpty()
                ? change.subject().size() >= length
                        && change.subject().subList(0, length).equals(clash.subject())
                : change.subject().equals(clash.subject()) && change.field().equals(clash.field());
    }
}
