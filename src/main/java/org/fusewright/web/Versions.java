package org.fusewright.web;

import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ProblemDetail;

import java.util.function.Supplier;
import java.util.stream.Stream;

/** Versions as entity tags (RFC 9110). */
public final class Versions {
    private Versions() {}

    public static String print(long version) {
        return "\"" + version + "\"";
    }

    /**
     * The version that a change may start from: the current one, when the header names it.
     *
     * @param stale what to answer when it names others
     * @throws org.springframework.web.ErrorResponseException 428 without the header, 412 when it
     *     names others
     */
    public static long required(
            @Nullable String ifMatch, long current, Supplier<ProblemDetail> stale) {
        return required(ifMatch, current, stale, Words.say("error.version-missing"));
    }

    /**
     * As above.
     *
     * @param missing what to say when there is no header
     */
    public static long required(
            @Nullable String ifMatch, long current, Supplier<ProblemDetail> stale, String missing) {
        if (ifMatch == null || ifMatch.isBlank()) {
            throw Problems.exception(Problems.of(HttpStatus.PRECONDITION_REQUIRED, missing));
        }
        boolean named =
                Stream.of(ifMatch.split(","))
                        .map(String::strip)
                        .anyMatch(tag -> tag.equals("*") || tag.equals(print(current)));
        if (!named) {
            throw Problems.exception(stale.get());
        }
        return current;
    }
}
