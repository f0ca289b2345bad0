package org.fusewright.setup;

import org.flywaydb.core.api.callback.Callback;
import org.flywaydb.core.api.callback.Context;
import org.flywaydb.core.api.callback.Event;
import org.springframework.stereotype.Component;

import java.sql.SQLException;

/** Lets a migration take its time: one statement may work on all that a shop has stored. */
@Component
class PatientMigrations implements Callback {
    private static final int NO_LIMIT = 0;

    @Override
    public boolean supports(Event event, Context context) {
        return event == Event.BEFORE_EACH_MIGRATE;
    }

    @Override
    public boolean canHandleInTransaction(Event event, Context context) {
        return true;
    }

    @Override
    public void handle(Event event, Context context) {
        try {
            context.getConnection().setNetworkTimeout(Runnable::run, NO_LIMIT);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    @Override
    public String getCallbackName() {
        return "patient migrations";
    }
}
