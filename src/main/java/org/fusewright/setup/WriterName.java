package org.fusewright.setup;

import org.fusewright.web.ChangedBy;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.TransactionExecution;
import org.springframework.transaction.TransactionExecutionListener;

/**
 * Tells the database, at the begin of each transaction that may write, who asked for it: its
 * triggers write that name into the trail of changes. Nobody asks for what the service does by
 * itself.
 */
@Component
class WriterName implements TransactionExecutionListener {
    private final ObjectProvider<JdbcClient> database;

    /** The client needs the transactions that it is told of here, so it is asked for late. */
    WriterName(ObjectProvider<JdbcClient> database) {
        this.database = database;
    }

    @Override
    public void afterBegin(TransactionExecution transaction, @Nullable Throwable failure) {
        if (failure == null && !transaction.isReadOnly()) {
            ChangedBy.findAsking().ifPresent(by -> tell(by.name()));
        }
    }

    private void tell(String name) {
        database.getObject()
                .sql("select set_config('fusewright.by', :name, true)")
                .param("name", name)
                .query(String.class)
                .single();
    }
}
