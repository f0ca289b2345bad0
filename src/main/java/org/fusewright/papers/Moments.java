package org.fusewright.papers;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Times as papers state them: in universal time, so that they read alike wherever printed. */
final class Moments {

    private static final DateTimeFormatter MINUTE =
            DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm 'UTC'", Locale.ROOT);

    private Moments() {}

    static String of(Instant at) {
        return MINUTE.format(at.atOffset(ZoneOffset.UTC));
    }
}
