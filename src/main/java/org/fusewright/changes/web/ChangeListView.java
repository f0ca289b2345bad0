package org.fusewright.changes.web;

import org.fusewright.changes.ChangeHead;
import org.fusewright.changes.ChangePage;
import org.springframework.web.util.UriComponentsBuilder;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A list of changes, and what was asked for; empty texts ask for all.
 *
 * @param what the code of a kind of record
 */
public record ChangeListView(ChangePage<ChangeHead> page, String what, String record, String who) {
    private static final int FIELDS_SHOWN = 6;

    public boolean isFiltered() {
        return !(what + record + who).isEmpty();
    }

    /** The address of the rest, if there is one. */
    public Optional<String> older() {
        if (page.next().isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(
                UriComponentsBuilder.fromPath("/changes")
                        .queryParam("what", "{what}")
                        .queryParam("record", "{record}")
                        .queryParam("who", "{who}")
                        .queryParam("after", page.next().getAsLong())
                        .encode()
                        .buildAndExpand(Map.of("what", what, "record", record, "who", who))
                        .toUriString());
    }

    /** The first fields of a change, by name. */
    public static String fields(ChangeHead head) {
        List<String> shown = head.fields().stream().limit(FIELDS_SHOWN).toList();
        return String.join(", ", shown) + (head.fields().size() > shown.size() ? ", …" : "");
    }
}
