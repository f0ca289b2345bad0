package org.fusewright.core.fitting;

import org.jspecify.annotations.Nullable;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Fitting tasks and arrangements as one line of text.
 *
 * <p>A task: {@code d1 d2:15A^30@rear r1>d1 | 3P=9 4P=11+0.1^20:40/20{1,3} | 2 spare}. A device
 * starts with d, a relay with r; then current (5 A), height (10 mm), location (seat), and the item
 * that it likes to sit next to. A form is named by its positions; then price (3P 9, else 2.75 a
 * position), price of an empty position's plugs (0.1), clearance (20 mm), limits of current in all
 * and for a position (none), and first positions of the relay pairs (1, 3, ... from four positions
 * on). An item may name its block: {@code #left/4P.2} must sit in block left, a 4P, at position 2,
 * and {@code ~left.2} would rather; type and position may be left out.
 *
 * <p>An arrangement: {@code 4P[d1 d2 r1-r1] left=3P[d3 . .] rear:4P[d4 . . .] left out: d9
 * released: d3 moved: d4}.
 */
final class Drawing {

    private static final Pattern ITEM =
            Pattern.compile(
                    "([dr]\\w*)(?::([\\d.]+)A)?(?:\\^([\\d.]+))?(?:@(\\w+))?(?:>(\\w+))?"
                            + "(?:([#~])(\\w+)(?:/(\\w+))?(?:\\.(\\d+))?)?");

    private static final Pattern FORM =
            Pattern.compile(
                    "((\\d+)P\\w*)(?:=([\\d.]+))?(?:\\+([\\d.]+))?(?:\\^([\\d.]+))?"
                            + "(?::([\\d.]+|-)/([\\d.]+|-))?(?:\\{([\\d,]*)})?");

    private Drawing() {}

    static FittingTask task(String text) {
        String[] parts = text.split("\\|");
        int spare = parts.length > 2 ? Integer.parseInt(parts[2].replace("spare", "").strip()) : 0;
        return new FittingTask(
                words(parts[0]).map(Drawing::item).toList(),
                words(parts[1]).map(Drawing::form).toList(),
                spare);
    }

    private static Stream<String> words(String text) {
        return Arrays.stream(text.strip().split("\\s+")).filter(w -> !w.isEmpty());
    }

    private static FittingItem item(String word) {
        Matcher m = matched(ITEM, word);
        return new FittingItem(
                m.group(1),
                m.group(1).startsWith("r") ? Width.RELAY_PAIR : Width.POSITION,
                m.group(3) == null ? 10 : Double.parseDouble(m.group(3)),
                m.group(2) == null ? 5 : Double.parseDouble(m.group(2)),
                m.group(4) == null ? "seat" : m.group(4),
                Optional.ofNullable(m.group(5)),
                Optional.ofNullable(m.group(7)).map(block -> place(m, block)));
    }

    private static Place place(Matcher m, String block) {
        return new Place(
                block,
                Optional.ofNullable(m.group(8)),
                m.group(9) == null
                        ? OptionalInt.empty()
                        : OptionalInt.of(Integer.parseInt(m.group(9))),
                m.group(6).equals("#"));
    }

    private static BlockForm form(String word) {
        Matcher m = matched(FORM, word);
        int positions = Integer.parseInt(m.group(2));
        List<Integer> pairs =
                m.group(8) == null
                        ? IntStream.rangeClosed(1, positions - 1)
                                .filter(p -> p % 2 == 1 && positions >= 4)
                                .boxed()
                                .toList()
                        : Arrays.stream(m.group(8).split(","))
                                .filter(s -> !s.isEmpty())
                                .map(Integer::valueOf)
                                .toList();
        String price = positions == 3 ? "9" : BigDecimal.valueOf(2.75 * positions).toString();
        return new BlockForm(
                m.group(1),
                "cap",
                positions,
                pairs,
                m.group(5) == null ? 20 : Double.parseDouble(m.group(5)),
                limit(m.group(6)),
                limit(m.group(7)),
                micros(m.group(3) == null ? price : m.group(3)),
                micros(m.group(4) == null ? "0.1" : m.group(4)));
    }

    private static Matcher matched(Pattern pattern, String word) {
        Matcher matcher = pattern.matcher(word);
        if (!matcher.matches()) {
            throw new IllegalArgumentException("cannot read " + word);
        }
        return matcher;
    }

    private static double limit(@Nullable String text) {
        return text == null || text.equals("-")
                ? Double.POSITIVE_INFINITY
                : Double.parseDouble(text);
    }

    static long micros(String amount) {
        return new BigDecimal(amount).movePointRight(6).longValueExact();
    }

    /** The task as text that {@link #task} reads. */
    static String text(FittingTask task) {
        return task.items().stream().map(Drawing::text).collect(Collectors.joining(" "))
                + " | "
                + task.forms().stream().map(Drawing::text).collect(Collectors.joining(" "))
                + " | "
                + task.sparePositions()
                + " spare";
    }

    private static String text(FittingItem item) {
        return item.id()
                + ":"
                + plain(item.currentA())
                + "A^"
                + plain(item.heightMm())
                + "@"
                + item.location()
                + item.besides().map(b -> ">" + b).orElse("")
                + item.place().map(Drawing::text).orElse("");
    }

    private static String text(Place place) {
        return (place.fixed() ? "#" : "~")
                + place.block()
                + place.type().map(type -> "/" + type).orElse("")
                + (place.firstPosition().isPresent() ? "." + place.firstPosition().getAsInt() : "");
    }

    private static String text(BlockForm form) {
        return "%s=%s+%s^%s:%s/%s{%s}"
                .formatted(
                        form.block(),
                        amount(form.costMicros()),
                        amount(form.emptyPositionMicros()),
                        plain(form.clearanceMm()),
                        plain(form.maxTotalA()),
                        plain(form.maxPositionA()),
                        form.relayPairStarts().stream()
                                .map(String::valueOf)
                                .collect(Collectors.joining(",")));
    }

    private static String amount(long micros) {
        return BigDecimal.valueOf(micros, 6).stripTrailingZeros().toPlainString();
    }

    private static String plain(double value) {
        return Double.isInfinite(value)
                ? "-"
                : BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }

    static String draw(Arrangement arrangement) {
        List<String> words = new ArrayList<>();
        for (PlacedBlock block : arrangement.blocks()) {
            String place = block.location().equals("seat") ? "" : block.location() + ":";
            String name = block.name().map(n -> n + "=").orElse("");
            words.add(place + name + block.form().block() + seats(block));
        }
        if (!arrangement.unplaced().isEmpty()) {
            words.add("left out: " + String.join(" ", arrangement.unplaced()));
        }
        if (!arrangement.released().isEmpty()) {
            words.add("released: " + String.join(" ", arrangement.released()));
        }
        if (!arrangement.moved().isEmpty()) {
            words.add("moved: " + String.join(" ", arrangement.moved()));
        }
        return String.join(" ", words);
    }

    private static String seats(PlacedBlock block) {
        List<String> seats = new ArrayList<>();
        for (int position = 1; position <= block.form().positions(); position++) {
            int at = position;
            Optional<String> item =
                    block.items().stream()
                            .filter(i -> i.firstPosition() == at)
                            .map(PlacedItem::item)
                            .findAny();
            if (item.isPresent() && item.get().startsWith("r")) {
                seats.add(item.get() + "-" + item.get());
                position++;
            } else {
                seats.add(item.orElse("."));
            }
        }
        return seats.stream().collect(Collectors.joining(" ", "[", "]"));
    }
}
