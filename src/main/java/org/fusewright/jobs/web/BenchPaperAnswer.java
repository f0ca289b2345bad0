package org.fusewright.jobs.web;

import org.fusewright.core.kit.Kit;
import org.fusewright.papers.BenchPaper;
import org.fusewright.papers.Paper;
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
record BenchPaperAnswer(BenchPaper paper, Paper sheet) {

    /**
     * @param name "kit-list" and so on
     * @param sheet "a4" or "letter"
     */
    static BenchPaperAnswer of(String name, String sheet) {
        BenchPaper paper =
                BenchPaper.parse(name)
                        .orElseThrow(
                                () ->
                                        new ResponseStatusException(
                                                HttpStatus.NOT_FOUND,
                                                Words.say("paper.none", allCodes())));
        return new BenchPaperAnswer(paper, KitPapers.paper(sheet));
    }

    private static String allCodes() {
        return Stream.of(BenchPaper.values())
                .map(BenchPaper::code)
                .collect(Collectors.joining(", "));
    }

    ResponseEntity<byte[]> with(Kit kit, OptionalInt revision) {
        String what = paper.title().toLowerCase(Locale.ROOT);
        return Downloads.file(
                Downloads.name(kit.job().reference(), what, "pdf"),
                MediaType.APPLICATION_PDF,
                paper.print(kit, revision, sheet));
    }
}
