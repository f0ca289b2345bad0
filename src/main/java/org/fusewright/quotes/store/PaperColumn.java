package org.fusewright.quotes.store;

/** A paper of a sent quote by the column that holds it. */
public enum PaperColumn {
    PDF_A4("pdf_a4"),
    PDF_LETTER("pdf_letter"),
    CSV("csv");

    private final String column;

    PaperColumn(String column) {
        this.column = column;
    }

    String column() {
        return column;
    }
}
