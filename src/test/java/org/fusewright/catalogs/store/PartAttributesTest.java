package org.fusewright.catalogs.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import org.fusewright.catalogs.PartKind;
import org.fusewright.catalogs.SampleFiles;
import org.fusewright.core.catalog.Cap;
import org.fusewright.core.catalog.PartNumber;
import org.junit.jupiter.api.Test;

import tools.jackson.core.JacksonException;

class PartAttributesTest {

    private static final Cap CAP =
            (Cap) new SampleFiles().read().catalog().getPart(new PartNumber("WDC-4-HIGH"));

    @Test
    void keepsTheSizeOfACapsLabel() {
        assertThat(PartAttributes.read(PartKind.CAP, CAP.item(), PartAttributes.write(CAP)))
                .isEqualTo(CAP);
    }

    @Test
    void readsACapThatWasKeptBeforeCapsHadLabels() {
        Cap read =
                (Cap)
                        PartAttributes.read(
                                PartKind.CAP,
                                CAP.item(),
                                "{\"fits\": [\"WDB-4\"], \"clearanceMm\": 24}");
        assertThat(read.labelWidthMm()).isEmpty();
        assertThat(read.labelHeightMm()).isEmpty();
        assertThat(read.clearanceMm()).isEqualTo(24);
    }

    @Test
    void rejectsACapWithoutItsClearance() {
        assertThatExceptionOfType(JacksonException.class)
                .isThrownBy(
                        () ->
                                PartAttributes.read(
                                        PartKind.CAP, CAP.item(), "{\"fits\": [\"WDB-4\"]}"));
    }
}
