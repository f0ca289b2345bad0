package org.fusewright.orders.store;

/** Where a paper of an order is kept. */
public enum PaperColumn {
    PDF_A4("pdf_a4"),
    PDF_LETTER("pdf_letter"),
    CSV("csv"),
    UBL("ubl");

    private final String column;

    PaperColumn(String column) {
        this.column = column;
    }

    String column() {
        return column;
    }
}
