package org.fusewright.web;

import jakarta.servlet.http.Cookie;
import jakarta.servlet.http.HttpServletRequest;

import org.springframework.web.context.request.RequestContextHolder;
import org.springframework.web.context.request.ServletRequestAttributes;
import org.springframework.web.util.WebUtils;

import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/**
 * Who makes a change: the person who is logged in ({@link Visitor}). Where nobody needs to log in,
 * the name that the request gives as the parameter "by", or the one that the browser was given once
 * and sends as a cookie. A handler gets it as an argument.
 */
public record ChangedBy(String name) {
    /** The name of the parameter. */
    public static final String PARAMETER = "by";

    public static final int MAX_LENGTH = 100;

    /** What the interface's description says of the parameter. */
    public static final String WORDS =
            "who makes the change, kept with its revision; \"shop\" when left out";

    static final String COOKIE = "changed-by";
    private static final ChangedBy SHOP = new ChangedBy("shop");

    /** Nobody in particular. */
    public static ChangedBy shop() {
        return SHOP;
    }

    /** The one who asks for the page that is made right now. */
    public static ChangedBy current() {
        return RequestContextHolder.getRequestAttributes() instanceof ServletRequestAttributes now
                ? current(now.getRequest())
                : SHOP;
    }

    private static ChangedBy current(HttpServletRequest request) {
        Visitor visitor = Visitor.of(request);
        return visitor.needsAccount() ? new ChangedBy(visitor.name()) : known(request).orElse(SHOP);
    }

    /**
     * The one whose request is being answered; empty for what the service does by itself. A
     * parameter that is no name is passed over here.
     */
    public static Optional<ChangedBy> findAsking() {
        if (!(RequestContextHolder.getRequestAttributes()
                instanceof ServletRequestAttributes now)) {
            return Optional.empty();
        }
        HttpServletRequest request = now.getRequest();
        Visitor visitor = Visitor.of(request);
        if (visitor.needsAccount()) {
            return Optional.of(new ChangedBy(visitor.name()));
        }
        return Optional.ofNullable(request.getParameter(PARAMETER))
                .flatMap(ChangedBy::find)
                .or(() -> known(request))
                .or(() -> Optional.of(SHOP));
    }

    /**
     * @throws org.springframework.web.server.ResponseStatusException 400 when the parameter is no
     *     name
     */
    static ChangedBy of(HttpServletRequest request) {
        Visitor visitor = Visitor.of(request);
        if (visitor.needsAccount()) {
            return new ChangedBy(visitor.name());
        }
        String given = request.getParameter(PARAMETER);
        return given == null ? known(request).orElse(SHOP) : of(given);
    }

    /**
     * The name that a document or form gives of who does something; where people log in, the one
     * who is logged in instead.
     */
    public static String orGiven(String given) {
        Visitor visitor = Visitor.current();
        return visitor.needsAccount() ? visitor.name() : given;
    }

    /** As above. */
    static ChangedBy of(String given) {
        return Asked.value(PARAMETER, find(given), Words.say("error.name", MAX_LENGTH));
    }

    private static Optional<ChangedBy> known(HttpServletRequest request) {
        Cookie cookie = WebUtils.getCookie(request, COOKIE);
        try {
            return Optional.ofNullable(cookie)
                    .map(kept -> URLDecoder.decode(kept.getValue(), StandardCharsets.UTF_8))
                    .flatMap(ChangedBy::find);
        } catch (IllegalArgumentException notOurs) {
            return Optional.empty();
        }
    }

    private static Optional<ChangedBy> find(String given) {
        String name = given.strip();
        boolean fits =
                !name.isEmpty()
                        && name.length() <= MAX_LENGTH
                        && name.codePoints().noneMatch(Character::isISOControl);
        return fits ? Optional.of(new ChangedBy(name)) : Optional.empty();
    }
}
