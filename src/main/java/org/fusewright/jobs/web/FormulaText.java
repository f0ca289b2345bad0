package org.fusewright.jobs.web;

import org.fusewright.core.formula.Expression;
import org.fusewright.core.words.Language;
import org.fusewright.web.Words;

import java.util.Locale;

/**
 * A formula as people write it, as HTML: names in italics with their index below, a root sign, a
 * dot for times. It has the terms and brackets of {@link Expression#text()}.
 */
public final class FormulaText {

    private FormulaText() {}

    /** The same formula as HTML; names hold letters and digits alone, so nothing needs escaping. */
    public static String html(Expression expression) {
        String text = expression.text();
        StringBuilder html = new StringBuilder(text.length() * 3);
        int at = 0;
        while (at < text.length()) {
            int end = at + 1;
            char first = text.charAt(at);
            if (Character.isLetter(first)) {
                while (end < text.length() && isOfName(text.charAt(end))) {
                    end++;
                }
                String word = text.substring(at, end);
                boolean function = end < text.length() && text.charAt(end) == '(';
                html.append(function ? function(word) : name(word));
            } else {
                html.append(sign(first));
            }
            at = end;
        }
        return html.toString();
    }

    private static boolean isOfName(char sign) {
        return Character.isLetterOrDigit(sign) || sign == '_';
    }

    /** "R_2" with its index below. */
    public static String name(String name) {
        String[] parts = name.split("_", 2);
        String letter = "<var>" + parts[0] + "</var>";
        return parts.length == 1 ? letter : letter + "<sub>" + parts[1] + "</sub>";
    }

    private static String function(String name) {
        return switch (name) {
            case "SQRT" -> "√";
            case "CEILING" -> Words.say("why.rounded-up");
            default -> name.toLowerCase(Locale.ROOT);
        };
    }

    private static String sign(char sign) {
        return switch (sign) {
            case '*' -> "·";
            case '-' -> "−";
            case '.' -> String.valueOf(Words.wording().language().decimalSign());
            case ',' -> Words.wording().language() == Language.ENGLISH ? "," : ";";
            default -> String.valueOf(sign);
        };
    }
}
