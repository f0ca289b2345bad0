package org.fusewright.quotes;

import org.fusewright.core.quote.Quote;
import org.fusewright.core.quote.QuoteChanges;
import org.fusewright.core.words.Wording;
import org.fusewright.papers.Paper;
import org.fusewright.papers.QuotePaper;
import org.fusewright.papers.QuoteTable;
import org.fusewright.quotes.store.PaperColumn;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/** The forms in which a quote goes out. */
public enum QuotePapers {
    PDF_A4(PaperColumn.PDF_A4),
    PDF_LETTER(PaperColumn.PDF_LETTER),
    CSV(PaperColumn.CSV);

    private final PaperColumn column;

    QuotePapers(PaperColumn column) {
        this.column = column;
    }

    public static QuotePapers pdf(Paper paper) {
        return switch (paper) {
            case A4 -> PDF_A4;
            case LETTER -> PDF_LETTER;
        };
    }

    PaperColumn column() {
        return column;
    }

    byte[] print(Quote quote, Optional<QuoteChanges> changes, boolean draft) {
        return switch (this) {
            case PDF_A4 -> QuotePaper.print(quote, changes, draft, Paper.A4, Wording.ENGLISH);
            case PDF_LETTER ->
                    QuotePaper.print(quote, changes, draft, Paper.LETTER, Wording.ENGLISH);
            case CSV -> QuoteTable.print(quote);
        };
    }

    static Map<PaperColumn, byte[]> printAll(Quote quote, Optional<QuoteChanges> changes) {
        Map<PaperColumn, byte[]> printed = new EnumMap<>(PaperColumn.class);
        for (QuotePapers paper : values()) {
            printed.put(paper.column, paper.print(quote, changes, false));
        }
        return printed;
    }
}
