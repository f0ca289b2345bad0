package org.fusewright.papers;

import org.fusewright.core.words.Language;
import org.fusewright.core.words.Wording;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.Locale;

/** Times as papers state them: in universal time, so that they read alike wherever printed. */
final class Moments {

    private static final DateTimeFormatter MINUTE =
            DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

    private Moments() {}

    static String of(Instant at, Wording wording) {
        Language language = wording.language();
        DateTimeFormatter minute =
                language == Language.ENGLISH
                        ? MINUTE
                        : DateTimeFormatter.ofLocalizedDateTime(
                                        FormatStyle.MEDIUM, FormatStyle.SHORT)
                                .withLocale(language.locale());
        return minute.format(at.atOffset(ZoneOffset.UTC)) + " UTC";
    }

    static String day(LocalDate day, Wording wording) {
        Language language = wording.language();
        return language == Language.ENGLISH
                ? day.toString()
                : DateTimeFormatter.ofLocalizedDate(FormatStyle.MEDIUM)
                        .withLocale(language.locale())
                        .format(day);
    }
}
