package org.fusewright.jobs.web;

import org.fusewright.core.kit.Kit;
import org.fusewright.core.words.Language;
import org.fusewright.papers.BenchPaper;
import org.fusewright.web.Downloads;
import org.fusewright.web.Words;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.server.ResponseStatusException;

import java.util.Locale;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A paper of the bench that a request asks for, as a file with a name. */
record BenchPaperAnswer(BenchPaper paper, AskedPaper asked) {

    /**
     * @param name "kit-list" and so on
     */
    static BenchPaperAnswer of(String name, AskedPaper asked) {
        BenchPaper paper =
                BenchPaper.parse(name)
                        .orElseThrow(
                                () ->
                                        new ResponseStatusException(
                                                HttpStatus.NOT_FOUND,
                                                Words.say("paper.none", allCodes())));
        return new BenchPaperAnswer(paper, asked);
    }

    private static String allCodes() {
        return Stream.of(BenchPaper.values())
                .map(BenchPaper::code)
                .collect(Collectors.joining(", "));
    }

    ResponseEntity<byte[]> with(Kit kit, OptionalInt revision) {
        return Downloads.file(
                Downloads.name(kit.job().reference(), what(), "pdf"),
                MediaType.APPLICATION_PDF,
                paper.print(kit, revision, asked.sheet(), asked.wording()));
    }

    /** The paper's title as it stands within a name: only English has no capital there. */
    private String what() {
        String title = paper.title(asked.wording());
        return asked.wording().language() == Language.ENGLISH
                ? title.toLowerCase(Locale.ENGLISH)
                : title;
    }
}
