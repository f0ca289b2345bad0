package org.fusewright.web;

import org.springframework.web.util.HtmlUtils;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** The fields of the form on a job's page as a browser would send them. */
public final class JobFormFields {
    private static final Pattern FIELD =
            Pattern.compile(
                    "<input[^>]*?name=\"([^\"]+)\"[^>]*?value=\"([^\"]*)\"[^>]*>"
                            + "|<select[^>]*?name=\"([^\"]+)\"(.*?)</select>",
                    Pattern.DOTALL);
    private static final Pattern CHOSEN = Pattern.compile("value=\"([^\"]*)\" selected");

    private JobFormFields() {}

    public static Map<String, String> of(String page) {
        String form = page.substring(page.indexOf("<form id=\"job\""));
        Matcher field = FIELD.matcher(form.substring(0, form.indexOf("</form>")));
        Map<String, String> fields = new LinkedHashMap<>();
        while (field.find()) {
            if (field.group(1) == null) {
                Matcher chosen = CHOSEN.matcher(field.group(4));
                fields.put(plain(field.group(3)), chosen.find() ? plain(chosen.group(1)) : "");
            } else if (!field.group().contains("checkbox") || field.group().contains(" checked")) {
                fields.put(plain(field.group(1)), plain(field.group(2)));
            }
        }
        return fields;
    }

    private static String plain(String text) {
        return HtmlUtils.htmlUnescape(text);
    }

    /** As the body of a request. */
    public static String print(Map<String, String> fields) {
        return fields.entrySet().stream()
                .map(field -> encoded(field.getKey()) + "=" + encoded(field.getValue()))
                .collect(Collectors.joining("&"));
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }
}
