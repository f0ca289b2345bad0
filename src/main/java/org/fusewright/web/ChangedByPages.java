package org.fusewright.web;

import io.swagger.v3.oas.annotations.Hidden;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

import org.springframework.core.MethodParameter;
import org.springframework.http.HttpHeaders;
import org.springframework.http.ResponseCookie;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.support.WebDataBinderFactory;
import org.springframework.web.context.request.NativeWebRequest;
import org.springframework.web.method.support.HandlerMethodArgumentResolver;
import org.springframework.web.method.support.ModelAndViewContainer;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;

/** Takes the name of the person at a browser, and gives it to whatever keeps a change. */
@Controller
@Hidden
class ChangedByPages implements WebMvcConfigurer, HandlerMethodArgumentResolver {
    private static final Duration KEPT = Duration.ofDays(400);

    /** Answers with the page that the name was typed on. */
    @PostMapping("/who")
    String keep(
            @RequestParam(ChangedBy.PARAMETER) String name,
            @RequestParam(defaultValue = "") String back,
            HttpServletResponse response) {
        ChangedBy by = name.isBlank() ? ChangedBy.shop() : ChangedBy.of(name);
        response.addHeader(
                HttpHeaders.SET_COOKIE,
                ResponseCookie.from(
                                ChangedBy.COOKIE,
                                URLEncoder.encode(by.name(), StandardCharsets.UTF_8))
                        .path("/")
                        .maxAge(KEPT)
                        .httpOnly(true)
                        .sameSite("Lax")
                        .build()
                        .toString());
        return "redirect:" + Asked.local(back);
    }

    @Override
    public void addArgumentResolvers(List<HandlerMethodArgumentResolver> resolvers) {
        resolvers.add(this);
    }

    @Override
    public boolean supportsParameter(MethodParameter parameter) {
        return parameter.getParameterType() == ChangedBy.class;
    }

    @Override
    public Object resolveArgument(
            MethodParameter parameter,
            ModelAndViewContainer container,
            NativeWebRequest request,
            WebDataBinderFactory binders) {
        return ChangedBy.of(request.getNativeRequest(HttpServletRequest.class));
    }
}
