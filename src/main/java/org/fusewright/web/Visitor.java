package org.fusewright.web;

import jakarta.servlet.http.HttpServletRequest;

import org.springframework.web.context.request.RequestContextHolder;
import org.springframework.web.context.request.ServletRequestAttributes;

import java.util.Optional;
import java.util.function.Supplier;

/**
 * Who asks for the answer being made, as far as pages and documents need to know.
 *
 * @param may what the visitor may see and do
 * @param name of the person who is logged in; empty for anybody else
 * @param proof the token to send along with what changes something; empty where none is asked for
 */
public record Visitor(Rights may, String name, Supplier<Optional<Token>> proof) {
    private static final String ATTRIBUTE = Visitor.class.getName();
    private static final Visitor ALONE = new Visitor(Rights.ALONE, "", Optional::empty);
    private static final Visitor NOBODY = new Visitor(Rights.NOBODY, "", Optional::empty);

    /** What a visitor may see and do. */
    public enum Rights {
        /** The one person of a service that answers to its own machine alone. */
        ALONE,
        /** A person who may do everything. */
        OWNER,
        /** A person who sees no prices. */
        BUILDER,
        /** Not logged in. */
        NOBODY
    }

    /**
     * A token against forged requests.
     *
     * @param parameter the form field that takes it
     * @param header the header that takes it where there is no form
     */
    public record Token(String parameter, String header, String value) {}

    /** Somebody who is not logged in, or not yet known. */
    public static Visitor nobody() {
        return NOBODY;
    }

    /** The one who asks for what is answered right now; the service itself may do everything. */
    public static Visitor current() {
        return RequestContextHolder.getRequestAttributes() instanceof ServletRequestAttributes now
                ? of(now.getRequest())
                : ALONE;
    }

    static Visitor of(HttpServletRequest request) {
        return request.getAttribute(ATTRIBUTE) instanceof Visitor visitor ? visitor : ALONE;
    }

    /** Whoever looks at the request later sees this visitor. */
    public void enter(HttpServletRequest request) {
        request.setAttribute(ATTRIBUTE, this);
    }

    /** Whether people must log in here. */
    public boolean needsAccount() {
        return may != Rights.ALONE;
    }

    public boolean isLoggedIn() {
        return may == Rights.OWNER || may == Rights.BUILDER;
    }

    /** Whether the pages of jobs and counts are open. */
    public boolean mayBuild() {
        return may != Rights.NOBODY;
    }

    /** Whether prices, quotes, orders and the catalog are open. */
    public boolean seesPrices() {
        return may == Rights.ALONE || may == Rights.OWNER;
    }

    public Optional<Token> token() {
        return proof.get();
    }

    /** The token as headers for htmx, in JSON; null where none is asked for. */
    public @org.jspecify.annotations.Nullable String headers() {
        return token().map(token -> "{\"%s\":\"%s\"}".formatted(token.header(), token.value()))
                .orElse(null);
    }
}
