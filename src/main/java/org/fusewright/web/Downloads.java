package org.fusewright.web;

import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;

import java.nio.charset.StandardCharsets;

/** Files that a browser saves under a name. */
public final class Downloads {
    private Downloads() {}

    public static ResponseEntity<byte[]> file(String name, MediaType type, byte[] content) {
        return ResponseEntity.ok()
                .contentType(type)
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        ContentDisposition.attachment()
                                .filename(name, StandardCharsets.UTF_8)
                                .build()
                                .toString())
                .body(content);
    }

    /** A name that every file system takes: "TQ-014 kit list.pdf". */
    public static String name(String reference, String what, String ending) {
        return reference.replaceAll("[^\\p{L}\\p{N}._-]+", "-") + " " + what + "." + ending;
    }
}
