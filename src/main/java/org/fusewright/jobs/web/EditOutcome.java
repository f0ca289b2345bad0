package org.fusewright.jobs.web;

import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.fusewright.jobs.JobClash;

import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;

/**
 * What came of a change on a job's page.
 *
 * @param made the revision that it made; empty when it made none
 * @param meanwhile what others changed since the revision that it started from, in sentences
 * @param clashes what was not taken, because somebody else changed the same
 */
public record EditOutcome(OptionalInt made, List<Text> meanwhile, List<Clash> clashes) {
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
        public Text says() {
            return Phrase.of("clash.says." + code(), by, what.about());
        }

        /** What the button is called that takes mine. */
        public Text mine() {
            return Phrase.of("clash.mine." + code(), what.mine().orElse(what.about()));
        }

        /** What the button is called that leaves theirs. */
        public Text theirs() {
            return Phrase.of("clash.theirs." + code(), by, what.theirs().orElse(what.about()));
        }

        private String code() {
            return what.kind().name().toLowerCase(Locale.ROOT).replace('_', '-');
        }

        /** What the form's button that takes mine does. */
        public String action() {
            return what.kind() == JobClash.Kind.I_REMOVED_IT
                    ? "remove " + what.pointer()
                    : FormAction.putting(what);
        }
    }
}
