package org.fusewright.jobs;

import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;

/** What differs between two documents of a job, field by field. */
public final class JobDifference {
    private static final JsonNode NO_ROWS = JsonNodeFactory.instance.arrayNode();
    private static final JsonNode NO_FIELDS = JsonNodeFactory.instance.objectNode();

    private final List<JobChange> changes = new ArrayList<>();

    private JobDifference() {}

    /** In the order of the documents; empty when both say the same. */
    public static List<JobChange> list(JsonNode before, JsonNode after) {
        JobDifference difference = new JobDifference();
        difference.compare(List.of(), JobFields.of(before), JobFields.of(after));
        return difference.changes;
    }

    /** Every field that an object of a document sets, as if each were set anew. */
    public static List<JobChange> listValues(JsonNode object) {
        JobDifference difference = new JobDifference();
        difference.compare(List.of(), NO_FIELDS, JobFields.withoutNulls(object));
        return difference.changes;
    }

    private void compare(List<Text> subject, JsonNode before, JsonNode after) {
        for (String name : JobFields.names(List.of(before, after))) {
            JsonNode old = before.path(name);
            JsonNode now = after.path(name);
            if (JobFields.isList(name)) {
                compareRows(subject, name, orElse(old, NO_ROWS), orElse(now, NO_ROWS));
            } else if (JobFields.GROUPS.contains(name) || name.equals(JobFields.RELAY)) {
                compare(subject, orElse(old, NO_FIELDS), orElse(now, NO_FIELDS));
            } else if (!JobFields.isSame(name, old, now)) {
                changes.add(
                        JobChange.of(
                                subject,
                                FieldWords.label(name),
                                FieldWords.print(name, old),
                                FieldWords.print(name, now)));
            }
        }
    }

    private static JsonNode orElse(JsonNode node, JsonNode otherwise) {
        return node.isContainer() ? node : otherwise;
    }

    private void compareRows(List<Text> within, String list, JsonNode before, JsonNode after) {
        RowMatch match = new RowMatch(list, before, after);
        boolean alone = list.equals(JobFields.LOADS) && before.size() == 1 && after.size() == 1;
        for (int old = 0; old < before.size(); old++) {
            List<Text> subject =
                    alone ? within : joined(within, FieldWords.subject(list, before.get(old), old));
            if (match.isGone(old)) {
                changes.add(JobChange.row(JobChange.Kind.REMOVED, subject));
            } else {
                compare(subject, before.get(old), after.get(match.later(old)));
            }
        }
        for (int now = 0; now < after.size(); now++) {
            if (match.isNew(now)) {
                List<Text> subject = joined(within, FieldWords.subject(list, after.get(now), now));
                changes.add(JobChange.row(JobChange.Kind.ADDED, subject));
            }
        }
        if (match.isReordered()) {
            changes.add(
                    JobChange.of(
                            within,
                            Phrase.of("change.order." + list),
                            names(list, before),
                            names(list, after)));
        }
    }

    static List<Text> joined(List<Text> within, Text subject) {
        return Stream.concat(within.stream(), Stream.of(subject)).toList();
    }

    private static Text names(String list, JsonNode rows) {
        String key = JobFields.keyOf(list);
        return Text.listed(
                StreamSupport.stream(rows.spliterator(), false)
                        .map(row -> Text.verbatim(row.path(key).asString("–")))
                        .toList());
    }
}
