package org.fusewright.catalogs.load;

import org.fusewright.catalogs.PartKind;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.words.Phrase;
import org.jspecify.annotations.Nullable;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Who names whom across the files. A row that has problems of its own still counts as there, so
 * that one slip makes one error.
 */
final class References {

    private static final Set<PartKind> FAMILY_KINDS =
            Set.of(PartKind.TERMINAL, PartKind.SEAL, PartKind.PLUG);

    private static final String SUPPLIER = "supplier";

    private final Map<String, PartKind> kinds = new HashMap<>();
    private final Map<String, Place> places = new HashMap<>();
    private final Map<PartKind, Set<String>> families = new EnumMap<>(PartKind.class);
    private final List<Runnable> checks = new ArrayList<>();

    private record Place(String file, long line) {}

    /** Notes that a name stands in this row; it may do so only once among those of its kind. */
    void declare(Row row, String column, String group, String name) {
        @Nullable Place before =
                places.putIfAbsent(group + " " + name, new Place(row.file(), row.line()));
        if (before != null) {
            row.reject(
                    column,
                    "catalog.there-already",
                    Phrase.of("catalog.place", before.file(), before.line()));
        }
    }

    void declarePart(Row row, PartKind kind) {
        String number = row.cell("part");
        declare(row, "part", "part", number);
        kinds.putIfAbsent(number, kind);
    }

    void offerFamily(PartKind kind, String family) {
        families.computeIfAbsent(kind, _ -> new HashSet<>()).add(family);
    }

    void needPart(Row row, String column, PartNumber number, Set<PartKind> allowed) {
        if (allowed.contains(kinds.get(number.value()))) {
            return;
        }
        checks.add(
                () -> {
                    PartKind kind = kinds.get(number.value());
                    if (kind == null) {
                        row.reject(column, "catalog.no-part", number);
                    } else if (!allowed.contains(kind)) {
                        row.reject(
                                column,
                                "catalog.not-of-kind",
                                Phrase.of("catalog.kind." + kind.code()),
                                number);
                    }
                });
    }

    void needSupplier(Row row) {
        if (places.containsKey(SUPPLIER + " " + row.cell(SUPPLIER))) {
            return;
        }
        checks.add(
                () -> {
                    String supplier = row.cell(SUPPLIER);
                    if (!places.containsKey(SUPPLIER + " " + supplier)) {
                        row.reject(SUPPLIER, "catalog.no-supplier", supplier);
                    }
                });
    }

    void needFamily(Row row, String column, String family) {
        checks.add(
                () -> {
                    for (PartKind kind : PartKind.values()) {
                        if (FAMILY_KINDS.contains(kind)
                                && !families.getOrDefault(kind, Set.of()).contains(family)) {
                            row.reject(
                                    column,
                                    "catalog.none-of-family",
                                    Phrase.of("catalog.kind." + kind.code()),
                                    family);
                        }
                    }
                });
    }

    /** Looks up all names, once every file has been read. */
    void check() {
        checks.forEach(Runnable::run);
    }
}
