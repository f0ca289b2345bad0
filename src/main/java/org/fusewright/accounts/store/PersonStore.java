package org.fusewright.accounts.store;

import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

import java.sql.Timestamp;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/** The rows of {@code account} and {@code account_link}, and the sessions of an account. */
@Repository
@Transactional(propagation = Propagation.MANDATORY)
public class PersonStore {

    /** A row of {@code account}. */
    public record Row(
            long id, String name, String role, boolean active, @Nullable String passwordHash) {

        public Optional<String> findHash() {
            return Optional.ofNullable(passwordHash);
        }
    }

    private static final String COLUMNS =
            "select id, name, role, active, password_hash from account ";

    private final JdbcClient jdbc;

    PersonStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    public List<Row> list() {
        return jdbc.sql(COLUMNS + "order by lower(name)").query(Row.class).list();
    }

    public Optional<Row> find(long id) {
        return jdbc.sql(COLUMNS + "where id = :id").param("id", id).query(Row.class).optional();
    }

    public Optional<Row> findByName(String name) {
        return jdbc.sql(COLUMNS + "where lower(name) = lower(:name)")
                .param("name", name)
                .query(Row.class)
                .optional();
    }

    /** Whoever changes accounts waits for others who do: of two last owners one must stay. */
    public void lock() {
        jdbc.sql("lock table account in share row exclusive mode").update();
    }

    /** Owners who can get in. */
    public int countOwners() {
        return jdbc.sql(
                        """
                        select count(*) from account
                        where role = 'owner' and active and password_hash is not null
                        """)
                .query(Integer.class)
                .single();
    }

    public long insert(String name, String role, Instant now) {
        return jdbc.sql(
                        """
                        insert into account (name, role, created_at)
                        values (:name, :role, :now) returning id
                        """)
                .param("name", name)
                .param("role", role)
                .param("now", Timestamp.from(now))
                .query(Long.class)
                .single();
    }

    public void setRole(long id, String role) {
        jdbc.sql("update account set role = :role where id = :id")
                .param("role", role)
                .param("id", id)
                .update();
    }

    public void setActive(long id, boolean active) {
        jdbc.sql("update account set active = :active where id = :id")
                .param("active", active)
                .param("id", id)
                .update();
    }

    public void setPassword(long id, String hash) {
        jdbc.sql("update account set password_hash = :hash where id = :id")
                .param("hash", hash)
                .param("id", id)
                .update();
    }

    /** Logs a person out everywhere. */
    public void endSessions(long id) {
        jdbc.sql("delete from spring_session where principal_name = :id")
                .param("id", Long.toString(id))
                .update();
    }

    /** A link in place of the one before. */
    public void replaceLink(@Nullable Long account, String secretHash, Instant expiresAt) {
        deleteLink(account);
        jdbc.sql("insert into account_link values (:hash, :account, :expires)")
                .param("hash", secretHash)
                .param("account", account)
                .param("expires", Timestamp.from(expiresAt))
                .update();
    }

    public void deleteLink(@Nullable Long account) {
        jdbc.sql("delete from account_link where account_id is not distinct from :account::bigint")
                .param("account", account)
                .update();
    }

    /**
     * A link that still holds: its account, or nothing for the first owner's.
     *
     * @return empty when there is no such link
     */
    public Optional<OptionalLong> findLink(String secretHash, Instant now) {
        return jdbc.sql(
                        """
                        select account_id from account_link
                        where secret_hash = :hash and expires_at > :now
                        """)
                .param("hash", secretHash)
                .param("now", Timestamp.from(now))
                .query(
                        (row, _) -> {
                            long id = row.getLong(1);
                            return row.wasNull() ? OptionalLong.empty() : OptionalLong.of(id);
                        })
                .optional();
    }

    public boolean hasFirstOwnersLink(Instant now) {
        return jdbc.sql(
                        """
                        select exists (select from account_link
                                       where account_id is null and expires_at > :now)
                        """)
                .param("now", Timestamp.from(now))
                .query(Boolean.class)
                .single();
    }
}
