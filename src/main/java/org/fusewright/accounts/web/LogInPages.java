package org.fusewright.accounts.web;

import io.swagger.v3.oas.annotations.Hidden;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;

import org.fusewright.accounts.AccountRefusedException;
import org.fusewright.accounts.AccountsMode;
import org.fusewright.accounts.Invited;
import org.fusewright.accounts.People;
import org.fusewright.accounts.UnknownLinkException;
import org.fusewright.web.Asked;
import org.fusewright.web.Secret;
import org.fusewright.web.Words;
import org.springframework.context.annotation.Conditional;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.security.authentication.AuthenticationManager;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.core.context.SecurityContextImpl;
import org.springframework.security.web.authentication.session.ChangeSessionIdAuthenticationStrategy;
import org.springframework.security.web.csrf.CsrfTokenRepository;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;

import java.util.Map;

/** Logging in and out, and the link by which a password is chosen. */
@Controller
@Hidden
@Conditional(AccountsMode.class)
class LogInPages {
    private final AuthenticationManager passwordCheck;
    private final SessionPerson sessionPerson;
    private final CsrfTokenRepository tokens;
    private final People people;
    private final FirstOwner firstOwner;

    LogInPages(
            AuthenticationManager passwordCheck,
            SessionPerson sessionPerson,
            CsrfTokenRepository tokens,
            People people,
            FirstOwner firstOwner) {
        this.passwordCheck = passwordCheck;
        this.sessionPerson = sessionPerson;
        this.tokens = tokens;
        this.people = people;
        this.firstOwner = firstOwner;
    }

    @GetMapping("/log-in")
    ModelAndView ask(
            @RequestParam(defaultValue = "/") String to,
            @RequestParam(required = false) boolean chosen) {
        firstOwner.inviteIfNone();
        return logInPage("", to, chosen ? Words.say("log-in.chosen") : "", HttpStatus.OK);
    }

    @PostMapping("/log-in")
    ModelAndView logIn(
            @RequestParam String name,
            @RequestParam String password,
            @RequestParam(defaultValue = "/") String to,
            HttpServletRequest request,
            HttpServletResponse response) {
        try {
            Authentication known =
                    passwordCheck.authenticate(PasswordCheck.asked(name, password, request));
            new ChangeSessionIdAuthenticationStrategy().onAuthentication(known, request, response);
            // A token that somebody planted before holds no more.
            tokens.saveToken(tokens.generateToken(request), request, response);
            sessionPerson.saveContext(new SecurityContextImpl(known), request, response);
            return new ModelAndView("redirect:" + Asked.local(to));
        } catch (TooManyAttemptsException many) {
            response.setHeader(HttpHeaders.RETRY_AFTER, Long.toString(many.seconds()));
            return logInPage(
                    name,
                    to,
                    Words.say("log-in.wait", many.seconds()),
                    HttpStatus.TOO_MANY_REQUESTS);
        } catch (AuthenticationException wrong) {
            return logInPage(name, to, Words.say("log-in.wrong"), HttpStatus.UNAUTHORIZED);
        }
    }

    private static ModelAndView logInPage(
            String name, String to, String notice, HttpStatus status) {
        return new ModelAndView(
                "accounts/login",
                Map.of("name", name, "to", Asked.local(to), "notice", notice),
                status);
    }

    @PostMapping("/log-out")
    String logOut(HttpServletRequest request, HttpServletResponse response) {
        HttpSession session = request.getSession(false);
        if (session != null) {
            session.invalidate();
        }
        tokens.saveToken(null, request, response);
        return "redirect:/log-in";
    }

    @GetMapping("/welcome/{secret}")
    ModelAndView welcome(@PathVariable String secret) {
        return welcomePage(people.getInvited(new Secret(secret).hash()), "", "", HttpStatus.OK);
    }

    @PostMapping("/welcome/{secret}")
    ModelAndView choose(
            @PathVariable String secret,
            @RequestParam(defaultValue = "") String name,
            @RequestParam String password,
            @RequestParam String again) {
        String hash = new Secret(secret).hash();
        Invited invited = people.getInvited(hash);
        if (!password.equals(again)) {
            return welcomePage(invited, name, Words.say("welcome.differ"), HttpStatus.BAD_REQUEST);
        }
        try {
            people.choosePassword(hash, name, password);
            return new ModelAndView("redirect:/log-in?chosen=true");
        } catch (AccountRefusedException refused) {
            return welcomePage(invited, name, Words.say(refused.reason()), HttpStatus.BAD_REQUEST);
        }
    }

    private static ModelAndView welcomePage(
            Invited invited, String name, String notice, HttpStatus status) {
        return new ModelAndView(
                "accounts/welcome",
                Map.of("invited", invited, "name", name, "notice", notice),
                status);
    }

    @ExceptionHandler
    ModelAndView unknown(UnknownLinkException unknown) {
        return new ModelAndView(
                "frame/error",
                Map.of(
                        "title",
                        Words.say("welcome.unknown"),
                        "detail",
                        Words.say("welcome.unknown-detail")),
                HttpStatus.NOT_FOUND);
    }
}
