package org.fusewright.web;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.HexFormat;

/**
 * What makes a link unguessable: 256 random bits. Only its hash is kept; as nothing of it can be
 * guessed, the hash need not be slow.
 *
 * @param text as it stands in the link
 */
public record Secret(String text) {
    private static final int BYTES = 32;
    private static final SecureRandom RANDOM = new SecureRandom();

    public static Secret draw() {
        byte[] bytes = new byte[BYTES];
        RANDOM.nextBytes(bytes);
        return new Secret(Base64.getUrlEncoder().withoutPadding().encodeToString(bytes));
    }

    /** SHA-256, in hexadecimal digits. */
    public String hash() {
        try {
            byte[] hash =
                    MessageDigest.getInstance("SHA-256")
                            .digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(hash);
        } catch (NoSuchAlgorithmException everyJavaHasIt) {
            throw new IllegalStateException(everyJavaHasIt);
        }
    }

    /** A secret is not for logs. */
    @Override
    public String toString() {
        return "secret";
    }
}
