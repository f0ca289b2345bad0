package org.fusewright.accounts.store;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

import java.time.Duration;
import java.util.Optional;

/** The rows of {@code log_in_attempt}; the database's clock counts, as it is the same for all. */
@Repository
@Transactional(propagation = Propagation.MANDATORY)
public class AttemptStore {
    private static final int LONGEST_WAIT_S = 300;

    private final JdbcClient jdbc;

    AttemptStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * Counts an attempt, unless it is too early for one: then how long it must wait. From the last
     * free one on each makes the next wait, 1 s, 2 s, 4 s, ...; an hour without any forgets them.
     */
    public Optional<Duration> begin(String who, int free) {
        boolean counted =
                jdbc.sql(
                                        """
                                        insert into log_in_attempt as kept
                                        values (:who, 1, clock_timestamp(), clock_timestamp())
                                        on conflict (who) do update
                                        set attempts = case when kept.last_at < clock_timestamp()
                                                                - interval '1 hour' then 1
                                                            else kept.attempts + 1 end,
                                            blocked_until = clock_timestamp() + case
                                                when kept.last_at < clock_timestamp() - interval '1 hour'
                                                    or kept.attempts + 1 < :free then interval '0 s'
                                                else interval '1 s' * least(:longest,
                                                    power(2, least(kept.attempts + 1 - :free, 20))) end,
                                            last_at = clock_timestamp()
                                        where kept.blocked_until <= clock_timestamp()
                                        """)
                                .param("who", who)
                                .param("free", free)
                                .param("longest", LONGEST_WAIT_S)
                                .update()
                        == 1;
        return counted ? Optional.empty() : Optional.of(wait(who));
    }

    private Duration wait(String who) {
        return jdbc.sql(
                        """
                        select greatest(1, ceil(extract(epoch from
                                                        blocked_until - clock_timestamp())))::int
                        from log_in_attempt where who = :who
                        """)
                .param("who", who)
                .query(Integer.class)
                .optional()
                .map(Duration::ofSeconds)
                .orElse(Duration.ofSeconds(1));
    }

    /** Nobody guesses at an account any more; with it go all that were forgotten long ago. */
    public void forget(String who) {
        jdbc.sql(
                        """
                        delete from log_in_attempt
                        where who = :who or last_at < clock_timestamp() - interval '1 day'
                        """)
                .param("who", who)
                .update();
    }

    /** An attempt that succeeded counts for nothing. */
    public void takeBack(String who) {
        jdbc.sql(
                        """
                        update log_in_attempt
                        set attempts = greatest(attempts - 1, 0), blocked_until = clock_timestamp()
                        where who = :who
                        """)
                .param("who", who)
                .update();
    }
}
