package org.fusewright.core.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.fusewright.core.TestJob;
import org.fusewright.core.TestStock;
import org.fusewright.core.catalog.Splice;
import org.junit.jupiter.api.Test;

/** Names that sizing relies on: leads and splices are named by their circuit or feed. */
class JobNamesTest {

    private final TestJob job = new TestJob();

    @Test
    void rejectsACircuitThatIsNamedLikeAFeed() {
        job.circuit("lamps").amps(1);
        job.circuit(TestJob.BATTERY).amps(1);

        assertThat(JobReferences.listProblems(job.build()))
                .extracting(JobProblem::pointer)
                .containsExactly("/circuits/1/id");
    }

    @Test
    void rejectsACatalogWithoutSplicesWhereTwoCircuitsNeedOne() {
        TestStock stock = TestStock.usual().without(Splice.class);
        job.circuit("a").amps(1);

        assertThat(job.resolve(stock.build()).circuits()).hasSize(1);

        job.circuit("b").amps(1);
        assertThatThrownBy(() -> job.resolve(stock.build()))
                .isInstanceOfSatisfying(
                        MalformedJobException.class,
                        malformed ->
                                assertThat(malformed.problems())
                                        .extracting(problem -> problem.detail().english())
                                        .containsExactly("the catalog has no splice"));
    }
}
