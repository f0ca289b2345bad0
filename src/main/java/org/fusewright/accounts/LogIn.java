package org.fusewright.accounts;

import org.fusewright.accounts.store.AttemptStore;
import org.fusewright.accounts.store.PersonStore;
import org.springframework.stereotype.Service;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Duration;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/**
 * Tells whether a name and a password belong together. Each attempt counts before the password is
 * looked at, so that attempts at the same time count as well, for the account and for the address
 * that it came from; one that succeeds is taken back. Too many make both wait, twice as long each
 * time, whichever instance is asked.
 */
@Service
public class LogIn {
    private static final int FREE_FOR_AN_ACCOUNT = 5;
    private static final int FREE_FOR_AN_ADDRESS = 30;

    /** What came of it. */
    public sealed interface Outcome {
        /** Name and password belong together. */
        record Known(Person person) implements Outcome {}

        /** They do not, or the person may not log in; which of the two is not told. */
        record Wrong() implements Outcome {}

        /** There were too many attempts; the password was not looked at. */
        record TooMany(Duration pause) implements Outcome {}
    }

    private final PersonStore people;
    private final AttemptStore attempts;
    private final Passwords passwords = new Passwords();
    private final TransactionTemplate transaction;

    LogIn(PersonStore people, AttemptStore attempts, PlatformTransactionManager transactions) {
        this.people = people;
        this.attempts = attempts;
        this.transaction = new TransactionTemplate(transactions);
    }

    /**
     * @param address from which the attempt comes
     */
    public Outcome check(String name, String password, String address) {
        // People type passwords into the wrong field: what was typed as a name is not kept.
        String account = "account " + hashed(name.strip().toLowerCase(Locale.ROOT));
        String from = "address " + address;
        Optional<Duration> wait = begin(account, from);
        if (wait.isPresent()) {
            return new Outcome.TooMany(wait.get());
        }
        Optional<PersonStore.Row> row = find(name.strip());
        boolean right = passwords.matches(password, row.flatMap(PersonStore.Row::findHash));
        if (!right || row.filter(PersonStore.Row::active).isEmpty()) {
            return new Outcome.Wrong();
        }
        transaction.executeWithoutResult(
                _ -> {
                    attempts.forget(account);
                    attempts.takeBack(from);
                });
        return new Outcome.Known(People.person(row.get()));
    }

    private Optional<PersonStore.Row> find(String name) {
        return Objects.requireNonNull(transaction.execute(_ -> people.findByName(name)));
    }

    /** How long to wait; else both are counted. */
    private Optional<Duration> begin(String account, String from) {
        return Objects.requireNonNull(
                transaction.execute(
                        status -> {
                            Optional<Duration> wait =
                                    attempts.begin(account, FREE_FOR_AN_ACCOUNT)
                                            .or(() -> attempts.begin(from, FREE_FOR_AN_ADDRESS));
                            if (wait.isPresent()) {
                                status.setRollbackOnly();
                            }
                            return wait;
                        }));
    }

    private static String hashed(String text) {
        try {
            return HexFormat.of()
                    .formatHex(
                            MessageDigest.getInstance("SHA-256")
                                    .digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException everyJavaHasIt) {
            throw new IllegalStateException(everyJavaHasIt);
        }
    }
}
