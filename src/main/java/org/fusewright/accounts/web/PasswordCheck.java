package org.fusewright.accounts.web;

import jakarta.servlet.http.HttpServletRequest;

import org.fusewright.accounts.LogIn;
import org.springframework.security.authentication.AuthenticationManager;
import org.springframework.security.authentication.BadCredentialsException;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.web.authentication.WebAuthenticationDetails;

/** Name and password, whether typed into the form or sent with a request. */
class PasswordCheck implements AuthenticationManager {
    private final LogIn logIn;

    PasswordCheck(LogIn logIn) {
        this.logIn = logIn;
    }

    static Authentication asked(String name, String password, HttpServletRequest request) {
        var asked = UsernamePasswordAuthenticationToken.unauthenticated(name, password);
        asked.setDetails(new WebAuthenticationDetails(request));
        return asked;
    }

    @Override
    public Authentication authenticate(Authentication asked) throws AuthenticationException {
        String address =
                asked.getDetails() instanceof WebAuthenticationDetails details
                        ? String.valueOf(details.getRemoteAddress())
                        : "";
        return switch (logIn.check(
                asked.getName(), String.valueOf(asked.getCredentials()), address)) {
            case LogIn.Outcome.Known known -> SessionPerson.authentication(known.person());
            case LogIn.Outcome.Wrong _ -> throw new BadCredentialsException("wrong");
            case LogIn.Outcome.TooMany many -> throw new TooManyAttemptsException(many.pause());
        };
    }
}
