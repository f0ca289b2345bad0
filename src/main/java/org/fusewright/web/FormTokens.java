package org.fusewright.web;

import gg.jte.TemplateOutput;
import gg.jte.html.HtmlInterceptor;

import java.util.Map;

/** Puts the token that proves where a form comes from into every form that changes something. */
final class FormTokens implements HtmlInterceptor {
    @Override
    public void onHtmlTagOpened(String tag, Map<String, Object> attributes, TemplateOutput page) {
        if ("post".equals(attributes.get("method"))) {
            Visitor.current()
                    .token()
                    .ifPresent(
                            token -> {
                                // The template's own bracket ends the field in place of the form.
                                page.writeContent("><input type=\"hidden\" name=\"");
                                page.writeContent(token.parameter());
                                page.writeContent("\" value=\"");
                                page.writeUserContent(token.value());
                                page.writeContent("\"");
                            });
        }
    }

    @Override
    public void onHtmlTagClosed(String tag, TemplateOutput page) {
        // Nothing stands at a form's end.
    }
}
