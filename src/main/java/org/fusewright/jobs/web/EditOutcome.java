package org.fusewright.jobs.web;

import org.fusewright.jobs.JobClash;

import java.util.List;
import java.util.OptionalInt;

/**
 * What came of a change on a job's page.
 *
 * @param made the revision that it made; empty when it made none
 * @param meanwhile what others changed since the revision that it started from, in sentences
 * @param clashes what was not taken, because somebody else changed the same
 */
public record EditOutcome(OptionalInt made, List<String> meanwhile, List<Clash> clashes) {
    static final EditOutcome NOTHING = new EditOutcome(OptionalInt.empty(), List.of(), List.of());

    public EditOutcome {
        meanwhile = List.copyOf(meanwhile);
        clashes = List.copyOf(clashes);
    }

    /**
     * A clash to pick from.
     *
     * @param by who made what stands
     * @param when that was
     */
    public record Clash(JobClash what, String by, String when) {
        /** The id of its element. */
        public String id() {
            return "clash" + JobForm.suffix(what.pointer()) + "-" + what.subject().hashCode();
        }

        /** What happened, in a sentence. */
        public String says() {
            return switch (what.kind()) {
                case BOTH_CHANGED -> "You and " + by + " both changed the " + what.about() + ".";
                case I_REMOVED_IT ->
                        "You removed " + what.about() + ", but " + by + " changed it meanwhile.";
                case THEY_REMOVED_IT ->
                        by + " removed " + what.about() + ", which you changed meanwhile.";
            };
        }

        /** What the button is called that takes mine. */
        public String mine() {
            return switch (what.kind()) {
                case BOTH_CHANGED -> "Take mine: " + what.mine();
                case I_REMOVED_IT -> "Remove it";
                case THEY_REMOVED_IT -> "Bring it back as I had it";
            };
        }

        /** What the button is called that leaves theirs. */
        public String theirs() {
            return switch (what.kind()) {
                case BOTH_CHANGED -> "Leave " + by + "’s: " + what.theirs();
                case I_REMOVED_IT -> "Leave it";
                case THEY_REMOVED_IT -> "Leave it removed";
            };
        }

        /** What the form's button that takes mine does. */
        public String action() {
            return what.kind() == JobClash.Kind.I_REMOVED_IT
                    ? "remove " + what.pointer()
                    : FormAction.putting(what);
        }
    }
}
