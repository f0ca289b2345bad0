package org.fusewright.jobs.web;

import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.fusewright.jobs.JobChange;
import org.fusewright.jobs.StoredJob;
import org.fusewright.web.Figures;

import java.util.List;

/**
 * What the list of a job's revisions shows.
 *
 * @param notice what the user must know first; empty for nothing
 */
public record RevisionsView(StoredJob job, List<Line> lines, String notice) {
    private static final int SHOWN = 5;

    /**
     * A revision.
     *
     * @param changes what it changed of the one before, in sentences
     */
    public record Line(int revision, String by, String when, List<Text> changes) {
        public Line {
            changes = List.copyOf(changes);
        }

        /** The changes that stand in the list. */
        public List<Text> first() {
            return changes.subList(0, Math.min(SHOWN, changes.size()));
        }

        /** The changes that open on demand. */
        public List<Text> rest() {
            return changes.subList(Math.min(SHOWN, changes.size()), changes.size());
        }
    }

    public RevisionsView {
        lines = List.copyOf(lines);
    }

    static Line line(Revisions.Entry entry) {
        return new Line(
                entry.revision().revision(),
                entry.revision().changedBy(),
                Figures.time(entry.revision().changedAt()),
                entry.revision().revision() == 1
                        ? List.of(Phrase.of("revisions.made"))
                        : entry.changes().isEmpty()
                                ? List.of(Phrase.of("revisions.nothing"))
                                : entry.changes().stream().map(JobChange::says).toList());
    }

    /** Whether older revisions are not in the list. */
    public boolean hasMore() {
        return !lines.isEmpty() && lines.getLast().revision() > 1;
    }
}
