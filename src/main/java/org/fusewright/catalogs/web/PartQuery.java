package org.fusewright.catalogs.web;

import org.fusewright.catalogs.Catalogs;
import org.fusewright.catalogs.PartKind;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.web.Problems;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ProblemDetail;
import org.springframework.web.ErrorResponseException;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What part of the catalog a caller asks for; parameters left out are empty. */
record PartQuery(Set<PartKind> kinds, String words, Optional<PartNumber> after, int limit) {

    private static final int MOST = 500;

    /**
     * @throws ErrorResponseException 400, naming every parameter that cannot be used
     */
    static PartQuery parse(
            @Nullable String kind, @Nullable String words, @Nullable String after, int limit) {
        Map<String, String> errors = new TreeMap<>();
        Set<PartKind> kinds = EnumSet.allOf(PartKind.class);
        if (kind != null && !kind.isEmpty()) {
            PartKind.parse(kind)
                    .ifPresentOrElse(
                            only -> kinds.retainAll(Set.of(only)),
                            () -> errors.put("kind", "must be one of " + codes()));
        }
        if (after != null && !after.isEmpty() && !PartNumber.isOne(after)) {
            errors.put("after", "must be a part number");
        }
        if (limit < 1 || limit > MOST) {
            errors.put("limit", "must be a whole number from 1 to " + MOST);
        }
        if (!errors.isEmpty()) {
            throw badRequest(errors);
        }
        return new PartQuery(
                kinds,
                words == null ? "" : words,
                Optional.ofNullable(after).filter(a -> !a.isEmpty()).map(PartNumber::new),
                limit);
    }

    private static String codes() {
        return Stream.of(PartKind.values()).map(PartKind::code).collect(Collectors.joining(", "));
    }

    private static ErrorResponseException badRequest(Map<String, String> errors) {
        ProblemDetail problem =
                Problems.of(HttpStatus.BAD_REQUEST, "The query cannot be answered as it is.");
        problem.setProperty(
                "errors",
                errors.entrySet().stream()
                        .map(e -> Map.of("parameter", e.getKey(), "detail", e.getValue()))
                        .toList());
        return Problems.exception(problem);
    }

    /** The parts asked for, and where to go on when there are more. */
    Found find(Catalogs catalogs) {
        List<Part> parts = catalogs.listParts(kinds, words, after, limit + 1);
        if (parts.size() <= limit) {
            return new Found(parts, Optional.empty());
        }
        List<Part> page = parts.subList(0, limit);
        return new Found(page, Optional.of(page.getLast().number()));
    }

    record Found(List<Part> parts, Optional<PartNumber> next) {}
}
