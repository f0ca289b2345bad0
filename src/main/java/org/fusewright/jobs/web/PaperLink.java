package org.fusewright.jobs.web;

import org.fusewright.papers.BenchPaper;
import org.fusewright.web.Words;

import java.util.List;
import java.util.stream.Stream;

/** What a page says of a paper of the bench: its name in addresses, and in words. */
public record PaperLink(String name, String title) {

    /** One for each paper, in the order in which the bench needs them. */
    public static List<PaperLink> listAll() {
        return Stream.of(BenchPaper.values())
                .map(paper -> new PaperLink(paper.code(), Words.say("paper." + paper.code())))
                .toList();
    }
}
