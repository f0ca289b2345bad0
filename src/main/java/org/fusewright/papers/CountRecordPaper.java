package org.fusewright.papers;

import org.fusewright.core.count.CountRecord;

/**
 * The record of a bag that was counted: what was found beside what should be, by whom and when. The
 * same record on the same paper gives the same bytes.
 */
public final class CountRecordPaper {

    private CountRecordPaper() {}

    /** Prints as PDF. */
    public static byte[] print(CountRecord record, Paper paper) {
        // Counts of one design differ in their number.
        String identity = "count " + record.number() + " of " + record.design().fingerprint();
        Sheet sheet = new Sheet(paper, KitHeading.of("Count record", record.design()), identity);
        new CountStatusSection(sheet, record).print();
        new CountLinesSection(sheet, record.comparison()).print();
        new CountExceptionsSection(sheet, record).print();
        new CountWeighingsSection(sheet, record.weighings()).print();
        new CountLaterSection(sheet, record).print();
        new CautionsSection(sheet).print();
        return sheet.close();
    }
}
