package org.fusewright.counts.load;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.MalformedJobException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import java.math.BigDecimal;

class KitFileTest {

    @Test
    void addsUpPartsAndPassesOverOtherColumns() {
        String csv = "\uFEFFtitle,quantity,part\r\n\"A, b\",2,X-1\r\n\r\n,1.250,W\r\nx,3,X-1\r\n";
        assertThat(KitFile.read(csv, ""))
                .hasSize(2)
                .containsEntry(new PartNumber("X-1"), BigDecimal.valueOf(5))
                .containsEntry(new PartNumber("W"), new BigDecimal("1.250"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "'' | is empty",
                "part;quantity | has no column \"part\"",
                "part | has no column \"quantity\"",
                "part,quantity~,1 | line 2, part \"\"",
                "part,quantity~A B,1 | line 2, part \"A B\"",
                "part,quantity~A,1~A,-1 | line 3, quantity \"-1\"",
                "part,quantity~A,1e5 | line 2, quantity \"1e5\"",
                "part,quantity~A,1.2345 | line 2, quantity \"1.2345\"",
                "part,quantity~A,1000001 | line 2, quantity \"1000001\"",
                "part,quantity~A | line 2, quantity \"\"",
                "part,quantity~\"A,1 | line 2, part \"A,1\"",
            })
    void namesLineAndColumnOfWhatIsWrong(String csv, String detail) {
        MalformedJobException wrong =
                catchThrowableOfType(
                        MalformedJobException.class,
                        () -> KitFile.read(csv.replace('~', '\n'), "/csv"));
        assertThat(wrong.problems()).extracting(JobProblem::pointer).containsOnly("/csv");
        assertThat(wrong.problems())
                .extracting(problem -> problem.detail().english())
                .anySatisfy(told -> assertThat(told).contains(detail));
    }
}
