package org.fusewright.quotes.store;

import org.fusewright.quotes.QuoteShare;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** The rows of {@code quote_share}. */
@Repository
@Transactional(propagation = Propagation.MANDATORY)
public class ShareStore {
    private static final String COLUMNS =
            "select id, quote_id, revision, created_at, expires_at, revoked_at from quote_share ";

    private final JdbcClient jdbc;

    ShareStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** False when there is no such revision, or it is a draft. */
    public boolean insert(
            long quote, int revision, String secretHash, Instant now, Instant expires) {
        return jdbc.sql(
                                """
                                insert into quote_share (quote_id, revision, secret_hash,
                                                         created_at, expires_at)
                                select quote_id, revision, :hash, :now, :expires
                                from quote_revision
                                where quote_id = :quote and revision = :revision
                                  and state <> 'draft'
                                """)
                        .param("hash", secretHash)
                        .param("now", Timestamp.from(now))
                        .param("expires", Timestamp.from(expires))
                        .param("quote", quote)
                        .param("revision", revision)
                        .update()
                == 1;
    }

    public List<QuoteShare> list(long quote, int revision) {
        return jdbc.sql(
                        COLUMNS
                                + "where quote_id = :quote and revision = :revision order by id"
                                + " desc")
                .param("quote", quote)
                .param("revision", revision)
                .query((row, _) -> share(row))
                .list();
    }

    public Optional<QuoteShare> find(String secretHash) {
        return jdbc.sql(COLUMNS + "where secret_hash = :hash")
                .param("hash", secretHash)
                .query((row, _) -> share(row))
                .optional();
    }

    public void revoke(long quote, long share, Instant now) {
        jdbc.sql(
                        """
                        update quote_share set revoked_at = :now
                        where id = :id and quote_id = :quote and revoked_at is null
                        """)
                .param("now", Timestamp.from(now))
                .param("id", share)
                .param("quote", quote)
                .update();
    }

    private static QuoteShare share(ResultSet row) throws SQLException {
        Timestamp revoked = row.getTimestamp("revoked_at");
        return new QuoteShare(
                row.getLong("id"),
                row.getLong("quote_id"),
                row.getInt("revision"),
                row.getTimestamp("created_at").toInstant(),
                row.getTimestamp("expires_at").toInstant(),
                Optional.ofNullable(revoked).map(Timestamp::toInstant));
    }
}
