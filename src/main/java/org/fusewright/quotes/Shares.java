package org.fusewright.quotes;

import org.fusewright.core.words.Phrase;
import org.fusewright.quotes.store.ShareStore;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

import java.time.Duration;
import java.time.Instant;
import java.util.List;

/**
 * The links by which customers read quotes. Only what was sent is shared, and so what a link shows
 * never changes; of its secret only the hash gets here.
 */
@Service
@Transactional
public class Shares {
    /** The longest that a link may hold, in days. */
    public static final int MOST_DAYS = 365;

    private final ShareStore store;

    Shares(ShareStore store) {
        this.store = store;
    }

    /**
     * @param days for which the link holds, 1 to {@link #MOST_DAYS}
     * @throws QuoteRefusedException when that revision was not sent
     */
    public void create(long quote, int revision, String secretHash, int days) {
        Instant now = Instant.now();
        if (!store.insert(quote, revision, secretHash, now, now.plus(Duration.ofDays(days)))) {
            throw new QuoteRefusedException(Phrase.of("shares.only-sent"));
        }
    }

    /** Those of one revision, newest first. */
    @Transactional(readOnly = true)
    public List<QuoteShare> list(long quote, int revision) {
        return store.list(quote, revision);
    }

    /** Takes a link back; one that holds no more anyway stays as it is. */
    public void revoke(long quote, long share) {
        store.revoke(quote, share, Instant.now());
    }

    /**
     * @throws UnknownShareException when the link does not hold
     */
    @Transactional(readOnly = true)
    public QuoteShare get(String secretHash) {
        Instant now = Instant.now();
        return store.find(secretHash)
                .filter(share -> share.holds(now))
                .orElseThrow(UnknownShareException::new);
    }
}
