package org.fusewright.jobs.web;

import org.springframework.web.util.UriUtils;

import java.nio.charset.StandardCharsets;

/**
 * Texts as parts of addresses. Of the hundreds of names on a page most need no encoding, and are
 * let through before an encoder looks at them.
 */
final class Addresses {
    private static final String KEPT_IN_QUERIES = ":/";

    private Addresses() {}

    static String encoded(String text) {
        return isPlain(text, "") ? text : UriUtils.encode(text, StandardCharsets.UTF_8);
    }

    /** As a parameter of a query, where colons and slashes may stand. */
    static String inQuery(String text) {
        return isPlain(text, KEPT_IN_QUERIES)
                ? text
                : UriUtils.encodeQueryParam(text, StandardCharsets.UTF_8);
    }

    private static boolean isPlain(String text, String alsoKept) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean isUnreserved =
                    c >= 'a' && c <= 'z'
                            || c >= 'A' && c <= 'Z'
                            || c >= '0' && c <= '9'
                            || "-._~".indexOf(c) >= 0;
            if (!isUnreserved && alsoKept.indexOf(c) < 0) {
                return false;
            }
        }
        return true;
    }
}
