package org.fusewright.jobs;

import org.fusewright.jobs.store.JobRows;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.context.SmartLifecycle;
import org.springframework.dao.DataAccessException;
import org.springframework.stereotype.Component;
import org.springframework.transaction.TransactionException;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;

/**
 * Tells those who look at jobs when somebody changes them, whichever instance of the service the
 * change went through. One short query looks after all jobs that are looked at, a few times a
 * second and only while there are any; no connection is held.
 */
@Component
public class JobWatch implements SmartLifecycle {
    /** Somebody who looks at a job. Must return at once. */
    public interface Viewer {
        /** Told the newest revision at first, and whenever there is a newer one. */
        void changed(int revision);

        /** The job was deleted. */
        void gone();

        /** Nothing happened for a while: a chance to notice that nobody looks any more. */
        void idle();

        /** The service stops. */
        void closing();
    }

    private static final class Watched {
        private final long job;
        private final Viewer viewer;
        private int told;
        private int quiet;

        private Watched(long job, Viewer viewer) {
            this.job = job;
            this.viewer = viewer;
        }
    }

    private static final Logger log = LoggerFactory.getLogger(JobWatch.class);
    private static final long PAUSE_MS = 300;
    private static final int IDLE_AFTER = 50;
    private static final int GONE = -1;

    private final JobRows rows;
    private final List<Watched> watched = new CopyOnWriteArrayList<>();
    private ScheduledExecutorService looking;
    private boolean failing;
    private boolean running;

    JobWatch(JobRows rows) {
        this.rows = rows;
        looking = Executors.newSingleThreadScheduledExecutor(JobWatch::thread);
    }

    private static Thread thread(Runnable task) {
        Thread thread = new Thread(task, "job-watch");
        thread.setDaemon(true);
        return thread;
    }

    /**
     * Starts telling a viewer about a job.
     *
     * @return ends it
     */
    public Runnable watch(long job, Viewer viewer) {
        Watched one = new Watched(job, viewer);
        watched.add(one);
        return () -> watched.remove(one);
    }

    private void look() {
        if (watched.isEmpty()) {
            return;
        }
        Set<Long> ids = watched.stream().map(one -> one.job).collect(Collectors.toSet());
        try {
            Map<Long, Integer> newest = new HashMap<>();
            rows.listNewest(ids).forEach(job -> newest.put(job.getId(), job.getRevision()));
            failing = false;
            for (Watched one : watched) {
                if (ids.contains(one.job)) {
                    tell(one, newest.getOrDefault(one.job, GONE));
                }
            }
        } catch (DataAccessException | TransactionException noAnswer) {
            if (!failing) {
                log.warn("The database does not answer: viewers learn of changes later");
            }
            failing = true;
        }
    }

    private static void tell(Watched one, int revision) {
        one.quiet++;
        if (revision == one.told) {
            if (one.quiet % IDLE_AFTER == 0) {
                one.viewer.idle();
            }
            return;
        }
        one.told = revision;
        if (revision == GONE) {
            one.viewer.gone();
        } else {
            one.viewer.changed(revision);
        }
    }

    @Override
    public synchronized void start() {
        if (looking.isShutdown()) {
            looking = Executors.newSingleThreadScheduledExecutor(JobWatch::thread);
        }
        looking.scheduleWithFixedDelay(this::look, 0, PAUSE_MS, TimeUnit.MILLISECONDS);
        running = true;
    }

    /** Before the server waits for its last requests: those of viewers would never end. */
    @Override
    public synchronized void stop() {
        looking.shutdownNow();
        running = false;
        watched.forEach(one -> one.viewer.closing());
        watched.clear();
    }

    @Override
    public synchronized boolean isRunning() {
        return running;
    }
}
