package org.fusewright.catalogs.store;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.ServiceTest;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.ConnectionCallback;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

import java.util.HashSet;
import java.util.Set;

/** An import waits long for its database, and nobody else does. */
@ServiceTest
class PatientImportTest {
    private static final int USUAL_MS = 10_000;
    private static final int PATIENT_MS = 15 * 60 * 1_000;
    private static final int MORE_THAN_THE_POOL = 20;

    @Autowired private CatalogStore store;
    @Autowired private JdbcTemplate jdbc;
    @Autowired private PlatformTransactionManager transactions;

    private int networkTimeout() {
        Integer timeout =
                jdbc.execute(
                        (ConnectionCallback<Integer>) connection -> connection.getNetworkTimeout());
        return timeout == null ? -1 : timeout;
    }

    @Test
    void givesTheConnectionBackAsImpatientAsItWas() {
        Set<Integer> during = new HashSet<>();
        Set<Integer> after = new HashSet<>();
        for (int i = 0; i < MORE_THAN_THE_POOL; i++) {
            new TransactionTemplate(transactions)
                    .executeWithoutResult(
                            status -> {
                                store.lockForImport();
                                during.add(networkTimeout());
                                status.setRollbackOnly();
                            });
            after.add(networkTimeout());
        }
        assertThat(during).containsExactly(PATIENT_MS);
        assertThat(after).containsExactly(USUAL_MS);
    }
}
