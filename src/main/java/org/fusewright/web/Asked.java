package org.fusewright.web;

import org.springframework.http.HttpStatus;
import org.springframework.web.server.ResponseStatusException;

import java.net.URI;
import java.net.URISyntaxException;
import java.util.Optional;

/** Parameters of a request; one that is not allowed is a bad request that says what is. */
public final class Asked {
    private static final int MOST_ENTRIES = 200;

    private Asked() {}

    /** How many entries of a list are asked for at once. */
    public static int limit(int limit) {
        if (limit < 1 || limit > MOST_ENTRIES) {
            throw refused("limit", Words.say("error.limit", MOST_ENTRIES));
        }
        return limit;
    }

    /**
     * @param read what the parameter says; empty when it is nothing that it may be
     * @param words what it may be
     */
    public static <T> T value(String parameter, Optional<T> read, String words) {
        return read.orElseThrow(() -> refused(parameter, words));
    }

    /**
     * An address within this service; the first page in place of any other. Browsers take any
     * number of slashes at the begin for another host.
     */
    public static String local(String address) {
        return address.startsWith("/") && !address.startsWith("//") && isAddress(address)
                ? address
                : Readers.START;
    }

    private static boolean isAddress(String address) {
        try {
            new URI(address);
            return true;
        } catch (URISyntaxException noAddress) {
            return false;
        }
    }

    private static ResponseStatusException refused(String parameter, String words) {
        return new ResponseStatusException(
                HttpStatus.BAD_REQUEST, Words.say("error.asked", parameter, words));
    }
}
