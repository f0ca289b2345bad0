package org.fusewright.jobs;

import org.fusewright.core.words.Text;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.MissingNode;
import tools.jackson.databind.node.ObjectNode;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Joins what two people changed of one job, field by field. What only one of them changed is taken;
 * where both changed the same in different ways, theirs stays and the clash is told.
 *
 * <p>Rows keep their order; new ones of mine come last, under another name where theirs has it.
 */
public final class JobMerge {
    /** The joined document, and what could not be joined. */
    public record Joined(ObjectNode document, List<JobClash> clashes) {
        public Joined {
            clashes = List.copyOf(clashes);
        }
    }

    /** A clash whose place is told once the document is whole. */
    private record Found(JsonNode holder, String name, JobClash clash) {}

    private static final JsonNode MISSING = MissingNode.getInstance();
    private static final String NOWHERE = "?";

    private final List<Found> found = new ArrayList<>();
    private final Map<NamedList, Map<String, String>> renamed = new HashMap<>();

    private JobMerge() {}

    /**
     * @param base what both started from
     * @param mine what was made of it here
     * @param theirs what stands by now
     */
    public static Joined join(JsonNode base, JsonNode mine, JsonNode theirs) {
        JobMerge merge = new JobMerge();
        ObjectNode fields =
                merge.objects(
                        List.of(), JobFields.of(base), JobFields.of(mine), JobFields.of(theirs));
        merge.followNames(fields);
        List<JobClash> clashes = new ArrayList<>();
        for (Found one : merge.found) {
            clashes.add(one.clash().at(find("", fields, one.holder()) + one.name()));
        }
        return new Joined(JobFields.toDocument(fields), clashes);
    }

    private ObjectNode objects(List<Text> subject, JsonNode base, JsonNode mine, JsonNode theirs) {
        ObjectNode joined = JsonNodeFactory.instance.objectNode();
        for (String name : JobFields.names(List.of(theirs, mine))) {
            JsonNode value =
                    value(
                            joined,
                            subject,
                            name,
                            base.path(name),
                            mine.path(name),
                            theirs.path(name));
            if (!value.isMissingNode()) {
                joined.set(name, value);
            }
        }
        return joined;
    }

    private JsonNode value(
            ObjectNode holder,
            List<Text> subject,
            String name,
            JsonNode base,
            JsonNode mine,
            JsonNode theirs) {
        if (JobFields.isList(name)) {
            return rows(holder, subject, name, base, mine, theirs);
        }
        if (JobFields.GROUPS.contains(name)) {
            ObjectNode joined = objects(subject, base, mine, theirs);
            return joined.isEmpty() ? theirs : joined;
        }
        if (JobFields.isSame(name, mine, base) || JobFields.isSame(name, mine, theirs)) {
            return theirs;
        }
        if (JobFields.isSame(name, theirs, base)) {
            return mine;
        }
        if (name.equals(JobFields.RELAY) && mine.isObject() && theirs.isObject()) {
            return objects(subject, base, mine, theirs);
        }
        JobClash clash =
                new JobClash(
                        JobClash.Kind.BOTH_CHANGED,
                        "",
                        subject,
                        Optional.of(FieldWords.label(name)),
                        Optional.of(FieldWords.print(name, mine)),
                        Optional.of(FieldWords.print(name, theirs)),
                        mine);
        found.add(new Found(holder, "/" + name, clash));
        return theirs;
    }

    private ArrayNode rows(
            ObjectNode holder,
            List<Text> within,
            String list,
            JsonNode base,
            JsonNode mine,
            JsonNode theirs) {
        RowMatch here = new RowMatch(list, base, mine);
        RowMatch there = new RowMatch(list, base, theirs);
        noteNames(list, base, mine, here);
        noteNames(list, base, theirs, there);
        ArrayNode joined = JsonNodeFactory.instance.arrayNode();
        for (int i = 0; i < theirs.size(); i++) {
            JsonNode row = theirs.get(i);
            List<Text> subject = subject(within, list, row, i);
            JsonNode start = there.isNew(i) ? MISSING : base.get(there.earlier(i));
            if (there.isNew(i)) {
                joined.add(row);
            } else if (!here.isGone(there.earlier(i))) {
                joined.add(objects(subject, start, mine.get(here.later(there.earlier(i))), row));
            } else if (!JobFields.isSame(list, start, row)) {
                joined.add(row);
                clashOfRow(row, "", JobClash.Kind.I_REMOVED_IT, subject, MISSING);
            }
        }
        for (int i = 0; i < mine.size(); i++) {
            JsonNode row = mine.get(i);
            if (here.isNew(i)) {
                joined.add(withFreeName(list, row, joined));
            } else if (there.isGone(here.earlier(i))
                    && !JobFields.isSame(list, base.get(here.earlier(i)), row)) {
                List<Text> subject = subject(within, list, row, i);
                clashOfRow(holder, "/" + list, JobClash.Kind.THEY_REMOVED_IT, subject, row);
            }
        }
        return joined;
    }

    private static List<Text> subject(List<Text> within, String list, JsonNode row, int index) {
        return JobDifference.joined(within, FieldWords.subject(list, row, index));
    }

    private void clashOfRow(
            JsonNode holder, String name, JobClash.Kind kind, List<Text> subject, JsonNode value) {
        found.add(new Found(holder, name, JobClash.ofRow(kind, subject, value)));
    }

    /** Two people who add a row at once may well have given it the same name. */
    private static JsonNode withFreeName(String list, JsonNode row, ArrayNode others) {
        String key = JobFields.keyOf(list);
        Set<String> taken = new HashSet<>();
        others.forEach(other -> taken.add(other.path(key).asString("")));
        String name = row.path(key).asString("");
        if (list.equals(JobFields.LOADS) || !taken.contains(name)) {
            return row;
        }
        String start = name.replaceFirst("-\\d+$", "");
        int number = 2;
        while (taken.contains(start + "-" + number)) {
            number++;
        }
        return ((ObjectNode) row).put(key, start + "-" + number);
    }

    private void noteNames(String list, JsonNode before, JsonNode after, RowMatch match) {
        for (NamedList named : NamedList.values()) {
            if (!named.field().equals(list)) {
                continue;
            }
            for (int i = 0; i < after.size(); i++) {
                String now = after.get(i).path(named.key()).asString("");
                String old =
                        match.isNew(i)
                                ? now
                                : before.get(match.earlier(i)).path(named.key()).asString("");
                if (!old.equals(now)) {
                    renamed.computeIfAbsent(named, key -> new HashMap<>()).put(old, now);
                }
            }
        }
    }

    /** What one of the two named anew is named anew in what the other one added. */
    private void followNames(ObjectNode fields) {
        renamed.forEach(
                (named, names) -> {
                    Set<String> there = new HashSet<>();
                    fields.path(named.field())
                            .forEach(row -> there.add(row.path(named.key()).asString("")));
                    for (JsonNode circuit : fields.path(JobFields.CIRCUITS)) {
                        named.references().forEach(at -> follow(circuit, at, names, there));
                    }
                });
    }

    private static void follow(
            JsonNode circuit, String reference, Map<String, String> names, Set<String> there) {
        int cut = reference.lastIndexOf('/');
        JsonNode holder = cut == 0 ? circuit : circuit.at(reference.substring(0, cut));
        String field = reference.substring(cut + 1);
        String now = names.get(holder.path(field).asString(""));
        if (now != null
                && !there.contains(holder.path(field).asString(""))
                && holder instanceof ObjectNode object) {
            object.put(field, now);
        }
    }

    /** Where the very node stands below another one, as a pointer. */
    private static String find(String at, JsonNode node, JsonNode wanted) {
        if (node == wanted) {
            return at;
        }
        if (node.isArray()) {
            for (int i = 0; i < node.size(); i++) {
                String below = find(at + "/" + i, node.get(i), wanted);
                if (!below.equals(NOWHERE)) {
                    return below;
                }
            }
        }
        for (Map.Entry<String, JsonNode> field : node.properties()) {
            String below = find(at + "/" + field.getKey(), field.getValue(), wanted);
            if (!below.equals(NOWHERE)) {
                return below;
            }
        }
        return NOWHERE;
    }
}
