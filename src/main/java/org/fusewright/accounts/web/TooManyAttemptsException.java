package org.fusewright.accounts.web;

import org.springframework.security.core.AuthenticationException;

import java.time.Duration;

/** Somebody must wait before the next attempt to log in. */
class TooManyAttemptsException extends AuthenticationException {
    private static final long serialVersionUID = 1L;

    private final Duration wait;

    TooManyAttemptsException(Duration wait) {
        super("too many attempts");
        this.wait = wait;
    }

    long seconds() {
        return wait.toSeconds();
    }
}
