package org.fusewright.changes.web;

import org.fusewright.changes.ChangeQuery;
import org.fusewright.changes.RecordKind;
import org.fusewright.web.Asked;
import org.fusewright.web.Words;
import org.jspecify.annotations.Nullable;

import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Which changes a caller asks for; an empty parameter is as good as none. */
final class ChangeAsked {
    private ChangeAsked() {}

    /**
     * @throws org.springframework.web.server.ResponseStatusException 400 for a kind that there is
     *     not, or a record without a kind
     */
    static ChangeQuery query(
            String what, String record, String who, @Nullable Long after, int limit) {
        Optional<RecordKind> kind =
                given(what)
                        .map(
                                code ->
                                        Asked.value(
                                                "what",
                                                RecordKind.find(code),
                                                Words.say("changes.kinds", codes())));
        Optional<String> one = given(record);
        if (one.isPresent()) {
            Asked.value("record", kind, Words.say("changes.record-of-what"));
        }
        return new ChangeQuery(
                kind,
                one,
                given(who),
                after == null ? OptionalLong.empty() : OptionalLong.of(after),
                Asked.limit(limit));
    }

    private static Optional<String> given(String text) {
        return Optional.of(text.strip()).filter(given -> !given.isEmpty());
    }

    private static String codes() {
        return Stream.of(RecordKind.values())
                .map(RecordKind::code)
                .collect(Collectors.joining(", "));
    }
}
