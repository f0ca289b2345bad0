package org.fusewright.changes.web;

import org.fusewright.changes.Change;
import org.fusewright.changes.ChangeAction;
import org.fusewright.changes.ChangeHead;
import org.fusewright.changes.RecordKind;
import org.springframework.web.util.UriComponentsBuilder;

import java.util.List;
import java.util.Optional;

/** A change as its page shows it. */
public record ChangeView(Change change, List<Line> lines) {
    /**
     * One field before and after.
     *
     * @param marked whether it differs where others do not
     */
    public record Line(String name, String before, String after, boolean marked) {}

    private static final String NOTHING = "–";

    public ChangeView {
        lines = List.copyOf(lines);
    }

    static ChangeView of(Change change) {
        boolean changed = change.head().action() == ChangeAction.CHANGED;
        return new ChangeView(
                change,
                FieldLines.of(change.before(), change.after()).stream()
                        .map(
                                line ->
                                        new Line(
                                                line.name(),
                                                line.before().orElse(NOTHING),
                                                line.after().orElse(NOTHING),
                                                changed && line.differs()))
                        .toList());
    }

    public ChangeHead head() {
        return change.head();
    }

    /** The fields that differ, or all of a row that was added or removed. */
    public List<Line> told() {
        return head().action() == ChangeAction.CHANGED
                ? lines.stream().filter(Line::marked).toList()
                : lines;
    }

    /** Fields of a document that is kept as a whole, and that are as before. */
    public List<Line> alike() {
        return head().action() == ChangeAction.CHANGED
                ? lines.stream().filter(line -> !line.marked()).toList()
                : List.of();
    }

    /** Where all changes of a record are listed. */
    public static String addressOfAll(ChangeHead head) {
        return UriComponentsBuilder.fromPath("/changes")
                .queryParam("what", head.kind().code())
                .queryParam("record", "{record}")
                .encode()
                .buildAndExpand(head.record())
                .toUriString();
    }

    /** Where the record itself is shown, if it still is there. */
    public Optional<String> recordAddress() {
        return page(head().kind())
                .map(
                        page ->
                                UriComponentsBuilder.fromPath(page + "/{record}")
                                        .encode()
                                        .buildAndExpand(head().record())
                                        .toUriString());
    }

    private static Optional<String> page(RecordKind kind) {
        return switch (kind) {
            case JOB -> Optional.of("/jobs");
            case QUOTE -> Optional.of("/quotes");
            case ORDER -> Optional.of("/orders");
            case COUNT -> Optional.of("/counts");
            case PART -> Optional.of("/catalog/parts");
            case SUPPLIER, LABOUR, MARK_UP, SHIPPING, TAX, CATALOG, RESTORE, PERSON ->
                    Optional.empty();
        };
    }
}
