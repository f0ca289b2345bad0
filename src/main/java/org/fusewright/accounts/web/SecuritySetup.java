package org.fusewright.accounts.web;

import jakarta.servlet.DispatcherType;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

import org.fusewright.accounts.AccountsMode;
import org.fusewright.accounts.LogIn;
import org.fusewright.accounts.People;
import org.fusewright.accounts.Person;
import org.fusewright.web.Visitor;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Conditional;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpHeaders;
import org.springframework.security.authentication.AuthenticationManager;
import org.springframework.security.authorization.AuthorizationDecision;
import org.springframework.security.authorization.AuthorizationManager;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.AbstractHttpConfigurer;
import org.springframework.security.config.http.SessionCreationPolicy;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.access.intercept.AuthorizationFilter;
import org.springframework.security.web.access.intercept.RequestAuthorizationContext;
import org.springframework.security.web.csrf.CookieCsrfTokenRepository;
import org.springframework.security.web.csrf.CsrfToken;
import org.springframework.security.web.csrf.CsrfTokenRepository;
import org.springframework.security.web.header.writers.CacheControlHeadersWriter;
import org.springframework.security.web.header.writers.DelegatingRequestMatcherHeaderWriter;
import org.springframework.security.web.util.matcher.RequestMatcher;
import org.springframework.web.filter.OncePerRequestFilter;

import java.io.IOException;
import java.util.Optional;

/**
 * The filters where people log in. A browser has a session and sends a token with whatever changes
 * something; a program sends name and password with each request to the interface or for figures
 * (HTTP Basic), has no session, and needs no token, as no page of others can make a browser send
 * these.
 */
@Configuration(proxyBeanMethods = false)
@Conditional(AccountsMode.class)
class SecuritySetup {
    private static final RequestMatcher WITH_PASSWORD =
            request ->
                    request.getRequestURI().matches("/(api|actuator)/.*")
                            && request.getHeader(HttpHeaders.AUTHORIZATION) != null;

    /** What is the same for everybody may stay in a browser; nothing else may. */
    private static final RequestMatcher PERSONAL =
            request -> !request.getRequestURI().matches("/[^/]*\\.(css|js|svg)|/webjars/.*");

    private final ClosedDoor door = new ClosedDoor();

    @Bean
    AuthenticationManager passwordCheck(LogIn logIn) {
        return new PasswordCheck(logIn);
    }

    @Bean
    SessionPerson sessionPerson(People people) {
        return new SessionPerson(people);
    }

    /** In a cookie, so that whoever only looks at the log-in page leaves no session behind. */
    @Bean
    CsrfTokenRepository tokens() {
        CookieCsrfTokenRepository tokens = new CookieCsrfTokenRepository();
        tokens.setCookieName("token");
        tokens.setHeaderName("X-CSRF-TOKEN");
        tokens.setCookieCustomizer(cookie -> cookie.path("/").httpOnly(true).sameSite("Lax"));
        return tokens;
    }

    @Bean
    @Order(1)
    SecurityFilterChain programs(HttpSecurity http, AuthenticationManager passwordCheck) {
        return common(http)
                .securityMatcher(WITH_PASSWORD)
                .csrf(AbstractHttpConfigurer::disable)
                .sessionManagement(
                        sessions -> sessions.sessionCreationPolicy(SessionCreationPolicy.STATELESS))
                .authenticationManager(passwordCheck)
                .httpBasic(basic -> basic.authenticationEntryPoint(door))
                .build();
    }

    @Bean
    @Order(2)
    SecurityFilterChain browsers(
            HttpSecurity http,
            AuthenticationManager passwordCheck,
            SessionPerson sessionPerson,
            CsrfTokenRepository tokens) {
        return common(http)
                .authenticationManager(passwordCheck)
                .securityContext(context -> context.securityContextRepository(sessionPerson))
                .csrf(csrf -> csrf.csrfTokenRepository(tokens))
                .build();
    }

    private HttpSecurity common(HttpSecurity http) {
        return http.requestCache(AbstractHttpConfigurer::disable)
                .logout(AbstractHttpConfigurer::disable)
                .headers(
                        headers ->
                                headers.defaultsDisabled()
                                        .addHeaderWriter(
                                                new DelegatingRequestMatcherHeaderWriter(
                                                        PERSONAL, new CacheControlHeadersWriter())))
                .exceptionHandling(
                        failures ->
                                failures.authenticationEntryPoint(door).accessDeniedHandler(door))
                .authorizeHttpRequests(
                        requests ->
                                requests.dispatcherTypeMatchers(
                                                DispatcherType.ERROR, DispatcherType.ASYNC)
                                        .permitAll()
                                        .anyRequest()
                                        .access(byTable()))
                .addFilterBefore(new VisitorFilter(), AuthorizationFilter.class);
    }

    private static AuthorizationManager<RequestAuthorizationContext> byTable() {
        return (_, context) ->
                new AuthorizationDecision(
                        AccessTable.find(context.getRequest())
                                .filter(who -> who.admits(visitor(context.getRequest())))
                                .isPresent());
    }

    /** Who asks, as far as the filters before have found out. */
    static Visitor visitor(HttpServletRequest request) {
        Authentication authentication = SecurityContextHolder.getContext().getAuthentication();
        Optional<Person> person = SessionPerson.person(authentication);
        return new Visitor(
                person.map(SecuritySetup::rights).orElse(Visitor.Rights.NOBODY),
                person.map(Person::name).orElse(""),
                () -> token(request));
    }

    private static Visitor.Rights rights(Person person) {
        return switch (person.role()) {
            case OWNER -> Visitor.Rights.OWNER;
            case BUILDER -> Visitor.Rights.BUILDER;
        };
    }

    private static Optional<Visitor.Token> token(HttpServletRequest request) {
        return request.getAttribute(CsrfToken.class.getName()) instanceof CsrfToken token
                ? Optional.of(
                        new Visitor.Token(
                                token.getParameterName(), token.getHeaderName(), token.getToken()))
                : Optional.empty();
    }

    /** Tells pages and handlers who asks. */
    private static final class VisitorFilter extends OncePerRequestFilter {
        @Override
        protected void doFilterInternal(
                HttpServletRequest request, HttpServletResponse response, FilterChain chain)
                throws ServletException, IOException {
            visitor(request).enter(request);
            chain.doFilter(request, response);
        }

        @Override
        protected boolean shouldNotFilterErrorDispatch() {
            return false;
        }
    }
}
