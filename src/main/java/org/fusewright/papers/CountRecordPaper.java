package org.fusewright.papers;

import org.fusewright.core.count.CountRecord;
import org.fusewright.core.words.Wording;

/**
 * The record of a bag that was counted: what was found beside what should be, by whom and when. The
 * same record on the same paper in the same wording gives the same bytes.
 */
public final class CountRecordPaper {

    private CountRecordPaper() {}

    /**
     * Prints as PDF.
     *
     * @param wording how its reader is spoken to
     */
    public static byte[] print(CountRecord record, Paper paper, Wording wording) {
        // Counts of one design differ in their number.
        String identity = "count " + record.number() + " of " + record.design().fingerprint();
        KitHeading heading = KitHeading.of(wording.say("print.count.record"), record.design());
        Sheet sheet = new Sheet(paper, wording, heading, identity);
        new CountStatusSection(sheet, record).print();
        new CountLinesSection(sheet, record.comparison()).print();
        new CountExceptionsSection(sheet, record).print();
        new CountWeighingsSection(sheet, record.weighings()).print();
        new CountLaterSection(sheet, record).print();
        new CautionsSection(sheet).print();
        return sheet.close();
    }
}
