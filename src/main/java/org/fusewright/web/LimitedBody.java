package org.fusewright.web;

import org.springframework.http.HttpStatus;
import org.springframework.web.server.ResponseStatusException;

import java.io.IOException;
import java.io.InputStream;

/** Reads request bodies no longer than a document of this service may be. */
public final class LimitedBody {
    /** Two megabytes: several times the longest job. */
    public static final int MAX_BYTES = 2 * 1024 * 1024;

    private LimitedBody() {}

    /**
     * @throws ResponseStatusException 413 when there is more
     */
    public static byte[] read(InputStream body) throws IOException {
        byte[] bytes = body.readNBytes(MAX_BYTES + 1);
        if (bytes.length > MAX_BYTES) {
            throw new ResponseStatusException(
                    HttpStatus.CONTENT_TOO_LARGE, Words.say("error.too-long"));
        }
        return bytes;
    }
}
