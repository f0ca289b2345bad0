package org.fusewright.accounts.web;

import jakarta.servlet.DispatcherType;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

import org.fusewright.accounts.AccountsMode;
import org.fusewright.web.Visitor;
import org.springframework.context.annotation.Conditional;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.HandlerMapping;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/**
 * Asks the {@link AccessTable} once more, for the handler that was picked: one that is missing in
 * the table stays closed though another row's pattern matches its path.
 */
@Component
@Conditional(AccountsMode.class)
class HandlerCheck implements HandlerInterceptor, WebMvcConfigurer {
    @Override
    public void addInterceptors(InterceptorRegistry registry) {
        registry.addInterceptor(this);
    }

    @Override
    public boolean preHandle(
            HttpServletRequest request, HttpServletResponse response, Object handler) {
        boolean own = handler instanceof HandlerMethod;
        if (own && request.getDispatcherType() == DispatcherType.REQUEST) {
            String pattern =
                    String.valueOf(
                            request.getAttribute(HandlerMapping.BEST_MATCHING_PATTERN_ATTRIBUTE));
            AccessTable.find(request.getMethod(), pattern)
                    .filter(who -> who.admits(Visitor.current()))
                    .orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND));
        }
        return true;
    }
}
