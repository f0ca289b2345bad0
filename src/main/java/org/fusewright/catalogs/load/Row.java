package org.fusewright.catalogs.load;

import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Recall;
import org.fusewright.core.words.Text;
import org.joda.money.CurrencyUnit;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * One row of a file. A cell that cannot be read is noted as a problem and stands in with some
 * allowed value, so that the rest of the row is looked at too; {@link #build} then gives nothing.
 */
final class Row {

    /** The place of an optional column that is not there. */
    static final int NOWHERE = -1;

    private static final int LONGEST_TEXT = 200;
    private static final Pattern NUMBER = Pattern.compile("-?\\d{1,12}(\\.\\d{1,9})?");
    private static final Pattern WHOLE = Pattern.compile("\\d{1,9}");
    private static final Pattern BLANKS = Pattern.compile("\\s+");
    private static final Map<String, CurrencyUnit> CURRENCIES =
            CurrencyUnit.registeredCurrencies().stream()
                    .collect(Collectors.toUnmodifiableMap(CurrencyUnit::getCode, unit -> unit));
    private static final Pattern CONTROL = Pattern.compile("\\p{Cntrl}");

    private final String file;
    private final long line;
    private final Map<String, Integer> places;
    private final List<String> cells;
    private final Problems problems;
    private final int problemsBefore;

    /**
     * @param places where each column stands among the cells, or {@link #NOWHERE}
     */
    Row(
            String file,
            long line,
            Map<String, Integer> places,
            List<String> cells,
            Problems problems) {
        this.file = file;
        this.line = line;
        this.places = places;
        this.cells = cells;
        this.problems = problems;
        this.problemsBefore = problems.count();
    }

    String file() {
        return file;
    }

    long line() {
        return line;
    }

    /** What stands in a cell; one that starts with =, +, - or @ is text like any other. */
    String cell(String column) {
        Integer place = places.get(column);
        if (place == null) {
            throw new IllegalArgumentException("no column " + column + " in " + file);
        }
        return place == NOWHERE ? "" : cells.get(place);
    }

    void reject(String column, Text detail) {
        problems.add(file, line, column, column.isEmpty() ? "" : cell(column), detail);
    }

    /** With a text of the bundle; see {@link Phrase}. */
    void reject(String column, String key, Object... values) {
        reject(column, Phrase.of(key, values));
    }

    String optionalText(String column) {
        String text = cell(column);
        if (text.length() > LONGEST_TEXT) {
            reject(column, "catalog.text-too-long");
        } else if (CONTROL.matcher(text).find()) {
            reject(column, "catalog.one-line");
        }
        return text;
    }

    String text(String column) {
        String text = optionalText(column);
        if (text.isEmpty()) {
            reject(column, "catalog.empty");
            return "?";
        }
        return text;
    }

    PartNumber partNumber(String column) {
        return partNumber(column, cell(column));
    }

    private PartNumber partNumber(String column, String text) {
        if (!PartNumber.isOne(text)) {
            problems.add(file, line, column, text, Phrase.of("catalog.no-part-number"));
            return new PartNumber("unreadable");
        }
        return new PartNumber(text);
    }

    double number(String column, Range range) {
        return number(column, cell(column), range).doubleValue();
    }

    /** A number that may be left out. */
    OptionalDouble optionalNumber(String column, Range range) {
        return cell(column).isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(number(column, range));
    }

    BigDecimal decimal(String column, Range range) {
        return number(column, cell(column), range);
    }

    int whole(String column, int lowest, int highest) {
        return whole(column, cell(column), lowest, highest);
    }

    private BigDecimal number(String column, String text, Range range) {
        if (!NUMBER.matcher(text).matches()) {
            problems.add(file, line, column, text, Phrase.of("catalog.no-number", range.inWords()));
            return range.lowest();
        }
        BigDecimal number = new BigDecimal(text);
        if (!range.holds(number)) {
            problems.add(file, line, column, text, Phrase.of("wrong.must-be", range.inWords()));
            return range.lowest();
        }
        return number;
    }

    private int whole(String column, String text, int lowest, int highest) {
        if (!WHOLE.matcher(text).matches()) {
            rejectWhole(column, text, lowest, highest);
            return highest;
        }
        int number = Integer.parseInt(text);
        if (number < lowest || number > highest) {
            rejectWhole(column, text, lowest, highest);
            return highest;
        }
        return number;
    }

    private void rejectWhole(String column, String text, int lowest, int highest) {
        problems.add(file, line, column, text, Phrase.of("wrong.whole-number", lowest, highest));
    }

    /** The upper end of a range whose lower end stands in another column. */
    double upperEnd(String column, Range range, String lowerColumn, double lower) {
        int before = problems.count();
        double upper = number(column, range);
        if (upper < lower && problems.count() == before) {
            reject(column, "catalog.below-lower", lowerColumn, cell(lowerColumn));
        }
        return upper;
    }

    /** A word or code that some type knows how to read. */
    <T> T parsed(String column, Function<String, Optional<T>> parse, Text allowed, T standIn) {
        return parse.apply(cell(column))
                .orElseGet(
                        () -> {
                            reject(column, "wrong.must-be", allowed);
                            return standIn;
                        });
    }

    CurrencyUnit currency(String column) {
        return parsed(
                column,
                code -> Optional.ofNullable(CURRENCIES.get(code)),
                Phrase.of("catalog.currency"),
                CurrencyUnit.EUR);
    }

    /** The entries of a cell, parted by blanks. */
    List<String> listEntries(String column) {
        String cell = cell(column);
        return cell.isEmpty() ? List.of() : List.of(BLANKS.split(cell));
    }

    List<PartNumber> listPartNumbers(String column) {
        List<String> entries = listEntries(column);
        if (entries.isEmpty()) {
            reject(column, "catalog.no-parts");
        }
        return entries.stream().map(entry -> partNumber(column, entry)).toList();
    }

    /** An entry "left=right"; the problem shows the entry and the form it should have: a text. */
    <T> List<T> listPairs(String column, String form, Function<Pair, T> read) {
        List<T> pairs = new ArrayList<>();
        for (String entry : listEntries(column)) {
            String[] sides = entry.split("=", -1);
            if (sides.length == 2) {
                pairs.add(read.apply(new Pair(column, sides[0], sides[1])));
            } else {
                problems.add(file, line, column, entry, Phrase.of("catalog.form", Phrase.of(form)));
            }
        }
        return pairs;
    }

    /** The two sides of one entry, read by the same rules as whole cells. */
    final class Pair {

        private final String column;
        private final String left;
        private final String right;

        private Pair(String column, String left, String right) {
            this.column = column;
            this.left = left;
            this.right = right;
        }

        PartNumber leftPart() {
            return partNumber(column, left);
        }

        double leftNumber(Range range) {
            return number(column, left, range).doubleValue();
        }

        int leftWhole(int lowest, int highest) {
            return whole(column, left, lowest, highest);
        }

        BigDecimal rightDecimal(Range range) {
            return number(column, right, range);
        }

        int rightWhole(int lowest, int highest) {
            return whole(column, right, lowest, highest);
        }

        /** The two ends of "low..high", either of which may be left open. */
        double[] rightEnds(Range range) {
            String[] ends = right.split("\\.\\.", -1);
            if (ends.length != 2 || right.equals("..")) {
                problems.add(file, line, column, right, Phrase.of("catalog.low-high"));
                return new double[] {0, Double.POSITIVE_INFINITY};
            }
            double low = ends[0].isEmpty() ? 0 : number(column, ends[0], range).doubleValue();
            double high =
                    ends[1].isEmpty()
                            ? Double.POSITIVE_INFINITY
                            : number(column, ends[1], range).doubleValue();
            return new double[] {low, high};
        }
    }

    boolean hasProblems() {
        return problems.count() > problemsBefore;
    }

    /** Makes something of one cell; what its constructor refuses is a problem of that cell. */
    <T> T nested(String column, Supplier<T> make, T standIn) {
        int before = problems.count();
        try {
            return make.get();
        } catch (IllegalArgumentException refused) {
            if (problems.count() == before) {
                reject(column, reason(refused));
            }
            return standIn;
        }
    }

    /** Constructors say in English what they refuse. */
    private static Text reason(IllegalArgumentException refused) {
        return Recall.of(String.valueOf(refused.getMessage()), "refused.");
    }

    /** Makes something of the whole row; empty when the row has problems. */
    <T> Optional<T> build(Supplier<T> make) {
        return build("", problemsBefore, make);
    }

    /** The same, where the constructor can refuse only what stands in one cell. */
    <T> Optional<T> build(String column, Supplier<T> make) {
        return build(column, problems.count(), make);
    }

    private <T> Optional<T> build(String column, int before, Supplier<T> make) {
        try {
            T made = make.get();
            return hasProblems() ? Optional.empty() : Optional.of(made);
        } catch (IllegalArgumentException refused) {
            if (problems.count() == before) {
                reject(column, reason(refused));
            }
            return Optional.empty();
        }
    }
}
