package org.fusewright.core.kit;

import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.job.Job;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** Names a design: SHA-256 over the job with its defaults and the catalog's version, in hex. */
final class Fingerprint {

    private Fingerprint() {}

    static String of(Job job, Catalog catalog) {
        try {
            // Records print all their components in order, so equal jobs give equal text.
            byte[] content = (catalog.version() + "\n" + job).getBytes(StandardCharsets.UTF_8);
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }
}
