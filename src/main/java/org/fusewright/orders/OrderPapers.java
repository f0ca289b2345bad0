package org.fusewright.orders;

import org.fusewright.core.order.PurchaseOrder;
import org.fusewright.core.words.Wording;
import org.fusewright.orders.store.PaperColumn;
import org.fusewright.papers.Paper;
import org.fusewright.papers.PurchaseOrderPaper;
import org.fusewright.papers.PurchaseOrderTable;
import org.fusewright.papers.UblOrder;

import java.util.EnumMap;
import java.util.Map;

/** The forms in which an order goes out. */
public enum OrderPapers {
    PDF_A4(PaperColumn.PDF_A4),
    PDF_LETTER(PaperColumn.PDF_LETTER),
    CSV(PaperColumn.CSV),
    UBL(PaperColumn.UBL);

    private final PaperColumn column;

    OrderPapers(PaperColumn column) {
        this.column = column;
    }

    public static OrderPapers pdf(Paper paper) {
        return switch (paper) {
            case A4 -> PDF_A4;
            case LETTER -> PDF_LETTER;
        };
    }

    PaperColumn column() {
        return column;
    }

    byte[] print(PurchaseOrder order) {
        return switch (this) {
            case PDF_A4 -> PurchaseOrderPaper.print(order, Paper.A4, Wording.ENGLISH);
            case PDF_LETTER -> PurchaseOrderPaper.print(order, Paper.LETTER, Wording.ENGLISH);
            case CSV -> PurchaseOrderTable.print(order);
            case UBL -> UblOrder.print(order);
        };
    }

    static Map<PaperColumn, byte[]> printAll(PurchaseOrder order) {
        Map<PaperColumn, byte[]> printed = new EnumMap<>(PaperColumn.class);
        for (OrderPapers paper : values()) {
            printed.put(paper.column, paper.print(order));
        }
        return printed;
    }
}
