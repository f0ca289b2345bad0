package org.fusewright.web;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

import org.jspecify.annotations.Nullable;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.http.HttpHeaders;
import org.springframework.web.servlet.View;
import org.springframework.web.servlet.ViewResolver;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;

/** Makes page templates the views of this service: "jobs/list" is the template jobs/list.jte. */
@Configuration(proxyBeanMethods = false)
class Pages {
    private static final String PACKAGE = "org.fusewright.pages";

    @Bean
    TemplateEngine templateEngine() {
        TemplateEngine templates =
                TemplateEngine.createPrecompiled(null, ContentType.Html, null, PACKAGE);
        templates.setHtmlInterceptor(new FormTokens());
        return templates;
    }

    @Bean
    ViewResolver pageResolver(TemplateEngine templates) {
        return (name, locale) -> {
            String template = name + ".jte";
            return templates.hasTemplate(template) ? new Page(templates, template) : null;
        };
    }

    private record Page(TemplateEngine templates, String template) implements View {
        @Override
        public String getContentType() {
            return "text/html;charset=UTF-8";
        }

        @Override
        public void render(
                @Nullable Map<String, ?> model,
                HttpServletRequest request,
                HttpServletResponse response)
                throws IOException {
            Map<String, Object> parameters = new HashMap<>(model == null ? Map.of() : model);
            // Spring adds a binding result for each value; a template has no such parameter.
            parameters.keySet().removeIf(key -> key.startsWith("org.springframework."));
            gg.jte.output.Utf8ByteOutput page = new gg.jte.output.Utf8ByteOutput();
            templates.render(template, parameters, page);
            response.setContentType(getContentType());
            response.setCharacterEncoding(StandardCharsets.UTF_8);
            response.setHeader(HttpHeaders.CONTENT_LANGUAGE, Words.wording().language().code());
            response.setContentLength(page.getContentLength());
            page.writeTo(response.getOutputStream());
        }
    }
}
