package org.fusewright.catalogs.load;

import org.fusewright.catalogs.CatalogError;
import org.fusewright.catalogs.CatalogRejected;
import org.fusewright.core.words.Text;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Gathers what is wrong with the files, so that a person can mend all of it at once. */
final class Problems {

    /** Beyond so many, the files are of another kind altogether. */
    private static final int MOST = 1_000;

    private static final int LONGEST_VALUE = 200;

    private final List<CatalogError> errors = new ArrayList<>();

    void add(String file, long line, String column, String value, Text detail) {
        if (errors.size() < MOST) {
            String shown =
                    value.length() <= LONGEST_VALUE
                            ? value
                            : value.substring(0, LONGEST_VALUE) + "...";
            errors.add(new CatalogError(file, line, column, shown, detail));
        }
    }

    int count() {
        return errors.size();
    }

    /**
     * @throws CatalogRejected with all errors by file and line, when there are any
     */
    void throwIfAny() {
        if (!errors.isEmpty()) {
            throw new CatalogRejected(
                    errors.stream()
                            .sorted(
                                    Comparator.comparing(CatalogError::file)
                                            .thenComparing(CatalogError::line))
                            .toList());
        }
    }
}
