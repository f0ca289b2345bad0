package org.fusewright.core.count;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.catalogs.load.CatalogFolder;
import org.fusewright.core.catalog.BladeForm;
import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.catalog.Seal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Which part may stand in for which; the rules are common practice without a published source. */
class SubstitutionTest {
    private static final Catalog CATALOG = CatalogFolder.read(Path.of("catalog-sample")).catalog();
    private static final BagDesign DESIGN = new BagDesign("R", "T", "C", 1, "f", "c", 14.2);

    private static Substitution judge(String wanted, String offered) {
        return judge(wanted, part(offered), Optional.empty());
    }

    private static Part part(String number) {
        return CATALOG.getPart(new PartNumber(number));
    }

    private static Substitution judge(
            String wanted, Part offered, Optional<ExpectedLine.LeadRange> leads) {
        Part part = part(wanted);
        ExpectedLine line =
                new ExpectedLine(
                        part.number(),
                        part.title(),
                        Likeness.of(part),
                        BigDecimal.TWO,
                        ExpectedLine.EACH,
                        List.of(),
                        List.of(),
                        Masses.alike(2, part.massG()),
                        leads);
        return Substitution.judge(line, part, offered, DESIGN);
    }

    @ParameterizedTest
    @CsvSource({
        "TNA-10, PYF-10, true, a fuse of the same 10 A",
        "TNM-7.5, PYF-7.5, true, a fuse of the same 7.5 A",
        "TNA-10, PYF-15, false, 'rated 15 A, not 10 A'",
        "TNA-10, PYF-7.5, false, 'rated 7.5 A, not 10 A'",
        "TNA-10, PYC-10, false, blades",
        "PYF-10, TNA-10, false, only a fuse in place of a breaker",
        "TNA-10, TNM-10, false, only a fuse in place of a breaker",
        "PYC-10, PYK-10, false, only a fuse in place of a breaker",
        "WDT-B, WDT-C, false, only a fuse for a breaker and a seal for a seal",
        "TNA-10, WDS-2, false, only a fuse for a breaker and a seal for a seal",
        "TNA-10, TNA-10, false, TNA-10 is the part that is wanted",
    })
    void knowsWhatMayStandInForADevice(
            String wanted, String offered, boolean allowed, String because) {
        Substitution substitution = judge(wanted, offered);
        assertThat(substitution.allowed()).isEqualTo(allowed);
        assertThat(substitution.sentence().english()).contains(because);
    }

    @Test
    void rejectsAFuseThatInterruptsLessOrStandsTallerOrIsForLowerVoltage() {
        Device fuse = (Device) part("PYF-10");
        assertThat(judge("TNA-10", with(fuse, 32, 500, 8.5), Optional.empty()).sentence().english())
                .contains("interrupts 500 A, less than the 1000 A");
        assertThat(
                        judge("TNA-10", with(fuse, 12, 1000, 8.5), Optional.empty())
                                .sentence()
                                .english())
                .contains("may not interrupt at 14.2 V");
        assertThat(judge("TNA-10", with(fuse, 32, 1000, 30), Optional.empty()).sentence().english())
                .contains("stands taller");
        assertThat(judge("TNA-10", with(fuse, 32, 1000, 8.5), Optional.empty()).allowed()).isTrue();
    }

    private static Device with(Device fuse, double voltageV, double interruptingA, double tallMm) {
        return new Device(
                fuse.item(),
                fuse.kind(),
                BladeForm.MINI,
                fuse.ratingA(),
                voltageV,
                interruptingA,
                tallMm,
                fuse.milliohm(),
                fuse.colour(),
                fuse.gates(),
                fuse.rerating());
    }

    /** WDS-2 takes 1.6 to 2.2 mm, WDS-3 takes 2.1 to 2.7 mm. */
    @ParameterizedTest
    @CsvSource({
        "2.1, 2.2, true",
        "2.15, 2.15, true",
        "2.0, 2.2, false",
        "1.6, 1.9, false",
        "2.1, 2.8, false",
    })
    void takesASealOnlyWhenItFitsEveryLead(double thinnest, double thickest, boolean allowed) {
        Substitution substitution =
                judge(
                        "WDS-2",
                        part("WDS-3"),
                        Optional.of(new ExpectedLine.LeadRange(thinnest, thickest)));
        assertThat(substitution.allowed()).isEqualTo(allowed);
        assertThat(substitution.sentence().english())
                .contains("WDS-3 for WDS-2: its range 2.1 to 2.7 mm");
    }

    @Test
    void rejectsASealWithoutKnownLeadsOrOfAnotherFamily() {
        assertThat(judge("WDS-2", "WDS-3").allowed()).isFalse();
        Seal seal = (Seal) part("WDS-3");
        Seal stranger = new Seal(seal.item(), "Other", 1, 5);
        assertThat(
                        judge("WDS-2", stranger, Optional.of(new ExpectedLine.LeadRange(2, 2.1)))
                                .sentence()
                                .english())
                .contains("another family");
    }
}
