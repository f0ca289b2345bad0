package org.fusewright.counts.web;

import org.fusewright.counts.BagCount;
import org.fusewright.web.Problems;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;

import java.util.stream.Stream;

/** Versions of counts as entity tags (RFC 9110). */
final class CountTags {
    private CountTags() {}

    static String print(BagCount count) {
        return "\"" + count.version() + "\"";
    }

    /**
     * The version that a signature or deletion may start from.
     *
     * @throws org.springframework.web.ErrorResponseException 428 without the header, 412 when it
     *     names others
     */
    static long required(@Nullable String ifMatch, BagCount count) {
        if (ifMatch == null || ifMatch.isBlank()) {
            throw Problems.exception(
                    Problems.of(
                            HttpStatus.PRECONDITION_REQUIRED,
                            "Name the version that you saw: send its ETag as If-Match."));
        }
        boolean named =
                Stream.of(ifMatch.split(","))
                        .map(String::strip)
                        .anyMatch(tag -> tag.equals("*") || tag.equals(print(count)));
        if (!named) {
            throw Problems.exception(
                    Problems.of(HttpStatus.PRECONDITION_FAILED, CountErrors.STALE));
        }
        return count.version();
    }
}
