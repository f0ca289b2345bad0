package org.fusewright.accounts.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;

import org.fusewright.accounts.People;
import org.fusewright.accounts.Person;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.DeferredSecurityContext;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.core.context.SecurityContextImpl;
import org.springframework.security.web.context.HttpRequestResponseHolder;
import org.springframework.security.web.context.SecurityContextRepository;
import org.springframework.session.FindByIndexNameSessionRepository;

import java.util.List;
import java.util.Optional;

/**
 * Keeps the id of a person in the session and nothing else: what the person may do is asked anew
 * for each request, and a session outlives any change of the program's classes.
 */
class SessionPerson implements SecurityContextRepository {
    private static final String ATTRIBUTE = "person";

    private final People people;

    SessionPerson(People people) {
        this.people = people;
    }

    static Authentication authentication(Person person) {
        return UsernamePasswordAuthenticationToken.authenticated(person, null, List.of());
    }

    /** The person whom an authentication speaks of. */
    static Optional<Person> person(Authentication authentication) {
        return authentication != null && authentication.getPrincipal() instanceof Person person
                ? Optional.of(person)
                : Optional.empty();
    }

    @Override
    public DeferredSecurityContext loadDeferredContext(HttpServletRequest request) {
        return new Deferred(request);
    }

    @Override
    @Deprecated
    public SecurityContext loadContext(HttpRequestResponseHolder holder) {
        return load(holder.getRequest());
    }

    private SecurityContext load(HttpServletRequest request) {
        return id(request)
                .flatMap(people::findActive)
                .<SecurityContext>map(person -> new SecurityContextImpl(authentication(person)))
                .orElseGet(SecurityContextHolder::createEmptyContext);
    }

    private static Optional<Long> id(HttpServletRequest request) {
        HttpSession session = request.getSession(false);
        return session != null && session.getAttribute(ATTRIBUTE) instanceof Long id
                ? Optional.of(id)
                : Optional.empty();
    }

    @Override
    public void saveContext(
            SecurityContext context, HttpServletRequest request, HttpServletResponse response) {
        person(context.getAuthentication())
                .ifPresent(
                        person -> {
                            HttpSession session = request.getSession();
                            session.setAttribute(ATTRIBUTE, person.id());
                            // By this the sessions of a person are found, to end them.
                            session.setAttribute(
                                    FindByIndexNameSessionRepository.PRINCIPAL_NAME_INDEX_NAME,
                                    Long.toString(person.id()));
                        });
    }

    @Override
    public boolean containsContext(HttpServletRequest request) {
        return id(request).isPresent();
    }

    /** What needs no person, such as a script, asks no database. */
    private final class Deferred implements DeferredSecurityContext {
        private final HttpServletRequest request;
        private Optional<SecurityContext> loaded = Optional.empty();

        Deferred(HttpServletRequest request) {
            this.request = request;
        }

        @Override
        public SecurityContext get() {
            if (loaded.isEmpty()) {
                loaded = Optional.of(load(request));
            }
            return loaded.get();
        }

        @Override
        public boolean isGenerated() {
            return SessionPerson.person(get().getAuthentication()).isEmpty();
        }
    }
}
