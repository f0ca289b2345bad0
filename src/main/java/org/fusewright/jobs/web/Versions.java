package org.fusewright.jobs.web;

import org.fusewright.web.Problems;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;

import java.util.stream.Stream;

/** Versions as entity tags (RFC 9110). */
final class Versions {
    private Versions() {}

    static String print(long version) {
        return "\"" + version + "\"";
    }

    /**
     * The version that a change may start from: the current one, when the header names it.
     *
     * @throws org.springframework.web.ErrorResponseException 428 without the header, 412 when it
     *     names others
     */
    static long required(@Nullable String ifMatch, long current) {
        if (ifMatch == null || ifMatch.isBlank()) {
            throw Problems.exception(
                    Problems.of(
                            HttpStatus.PRECONDITION_REQUIRED,
                            "Name the version that you start from: send its ETag as If-Match."));
        }
        boolean named =
                Stream.of(ifMatch.split(","))
                        .map(String::strip)
                        .anyMatch(tag -> tag.equals("*") || tag.equals(print(current)));
        if (!named) {
            throw Problems.exception(JobErrors.stale());
        }
        return current;
    }
}
