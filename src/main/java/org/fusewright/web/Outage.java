package org.fusewright.web;

import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;

import java.time.Duration;
import java.util.Optional;

/** What the service needs and does not have for a while; nobody's fault who asked. */
public enum Outage {
    DATABASE_AWAY(HttpStatus.SERVICE_UNAVAILABLE, "error.database-away", Duration.ofSeconds(5)),
    DISK_FULL(HttpStatus.INSUFFICIENT_STORAGE, "error.disk-full", null);

    private final HttpStatus status;
    private final String text;
    private final @Nullable Duration retryAfter;

    Outage(HttpStatus status, String text, @Nullable Duration retryAfter) {
        this.status = status;
        this.text = text;
        this.retryAfter = retryAfter;
    }

    HttpStatus status() {
        return status;
    }

    /** The key of what is said of it. */
    String text() {
        return text;
    }

    /** When it is worth trying again, where that can be told. */
    Optional<Duration> retryAfter() {
        return Optional.ofNullable(retryAfter);
    }
}
