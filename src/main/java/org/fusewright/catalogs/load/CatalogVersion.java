package org.fusewright.catalogs.load;

import org.fusewright.catalogs.Supplier;
import org.fusewright.core.catalog.Offer;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.quantity.WireColour;
import org.fusewright.core.quantity.WireSize;
import org.fusewright.core.quote.LabourTask;
import org.jspecify.annotations.Nullable;

import java.lang.reflect.RecordComponent;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Names a catalog's content: the first 16 hex digits of the SHA-256 over all values, whatever the
 * order of rows and columns, the line ends, or the way a number is written. A value that is left
 * out has no part in it, so a catalog keeps its name when its parts may have something more.
 */
final class CatalogVersion {

    private static final int HEX_DIGITS = 16;

    /** The virtual machine makes them anew for each who asks. */
    private static final ClassValue<RecordComponent[]> COMPONENTS =
            new ClassValue<>() {
                @Override
                protected RecordComponent[] computeValue(Class<?> type) {
                    return type.getRecordComponents();
                }
            };

    private CatalogVersion() {}

    static String of(
            List<Part> parts,
            List<Offer> offers,
            List<Supplier> suppliers,
            List<LabourTask> labour) {
        List<String> lines = new ArrayList<>();
        for (List<? extends Record> records : List.of(records(parts), offers, suppliers, labour)) {
            for (Record row : records) {
                StringBuilder line = new StringBuilder();
                append(line, row);
                lines.add(line.toString());
            }
        }
        Collections.sort(lines);
        return HexFormat.of().formatHex(sha256(lines)).substring(0, HEX_DIGITS);
    }

    private static List<Record> records(List<Part> parts) {
        return parts.stream().map(Record.class::cast).toList();
    }

    /** Writes names and values so that different values never make the same text. */
    private static void append(StringBuilder line, Object value) {
        switch (value) {
            case PartNumber atom -> appendText(line, atom.toString());
            case WireSize atom -> appendText(line, atom.toString());
            case WireColour atom -> appendText(line, atom.toString());
            case Record row -> appendRecord(line, row);
            case Collection<?> items -> {
                line.append('[');
                items.forEach(item -> append(line, item));
                line.append(']');
            }
            default -> appendText(line, value.toString());
        }
    }

    private static void appendRecord(StringBuilder line, Record row) {
        line.append(row.getClass().getSimpleName()).append('{');
        for (RecordComponent component : COMPONENTS.get(row.getClass())) {
            Object value = valueOf(component, row);
            // What may be left out and is changes no version, however late it was thought of.
            if (!value.equals(Optional.empty()) && !value.equals(OptionalDouble.empty())) {
                line.append(component.getName()).append('=');
                append(line, value instanceof Optional<?> given ? given.get() : value);
            }
        }
        line.append('}');
    }

    private static Object valueOf(RecordComponent component, Record row) {
        try {
            return component.getAccessor().invoke(row);
        } catch (ReflectiveOperationException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    private static void appendText(StringBuilder line, String text) {
        line.append(text.length()).append(':').append(text);
    }

    /** Of all lines but those that stand there already. */
    private static byte[] sha256(List<String> sorted) {
        MessageDigest digest = sha256();
        @Nullable String before = null;
        for (String line : sorted) {
            if (!line.equals(before)) {
                digest.update(
                        (before == null ? line : "\n" + line).getBytes(StandardCharsets.UTF_8));
            }
            before = line;
        }
        return digest.digest();
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
