package org.fusewright.accounts;

import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.springframework.security.crypto.bcrypt.BCryptPasswordEncoder;
import org.springframework.security.crypto.password.PasswordEncoder;

import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.Optional;

/**
 * Hashes passwords with bcrypt. Argon2 would bring a cryptography library of its own; what bcrypt
 * leaves out, all beyond 72 bytes, is no password here. There are no rules of composition: only
 * length tells (NIST SP 800-63B, from memory).
 */
final class Passwords {
    private static final int FEWEST_BYTES = 12;
    private static final int MOST_BYTES = 72;

    private final PasswordEncoder encoder = new BCryptPasswordEncoder();

    /** Takes as long to compare with as any other. */
    private final String nobodysHash = encoder.encode("nobody has this one");

    /** What is wrong with a new password, if anything. */
    static Optional<Text> findFault(String password) {
        int bytes = bytes(prepared(password));
        return bytes < FEWEST_BYTES || bytes > MOST_BYTES
                ? Optional.of(Phrase.of("accounts.password-length", FEWEST_BYTES, MOST_BYTES))
                : Optional.empty();
    }

    String hash(String password) {
        return String.valueOf(encoder.encode(prepared(password)));
    }

    /** As slow for a person without a password as for any other. */
    boolean matches(String password, Optional<String> hash) {
        String prepared = prepared(password);
        boolean same = encoder.matches(prepared, hash.orElse(nobodysHash));
        return same && hash.isPresent() && bytes(prepared) <= MOST_BYTES;
    }

    /** The same signs whatever the keyboard composes them of. */
    private static String prepared(String password) {
        return Normalizer.normalize(password, Normalizer.Form.NFKC);
    }

    private static int bytes(String password) {
        return password.getBytes(StandardCharsets.UTF_8).length;
    }
}
