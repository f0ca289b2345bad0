package org.fusewright.core.fitting;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Looks at every way to share a few items out over blocks: the judge of the search, written for
 * plainness, and sharing nothing with it but the records.
 */
final class Exhaustive {

    /** Least cost, and the fewest blocks at that cost. */
    record Answer(long costMicros, int blocks) implements Comparable<Answer> {

        Answer plus(long micros) {
            return new Answer(costMicros + micros, blocks + 1);
        }

        @Override
        public int compareTo(Answer other) {
            return costMicros != other.costMicros
                    ? Long.compare(costMicros, other.costMicros)
                    : Integer.compare(blocks, other.blocks);
        }
    }

    private static final Answer NONE = new Answer(Long.MAX_VALUE / 2, 0);

    private final FittingTask task;
    private final List<FittingItem> items;

    /** Best answer that places exactly these items (bits) and leaves at least so many free. */
    private final Answer[][] best;

    private Exhaustive(FittingTask task) {
        this.task = task;
        items = task.items().stream().filter(i -> !listUnplaced(task).contains(i.id())).toList();
        best = new Answer[1 << items.size()][task.sparePositions() + 1];
    }

    static Answer solve(FittingTask task) {
        Exhaustive search = new Exhaustive(task);
        return search.items.isEmpty() ? new Answer(0, 0) : search.best();
    }

    static List<String> listUnplaced(FittingTask task) {
        List<String> ids = new ArrayList<>();
        for (FittingItem item : task.items()) {
            if (task.forms().stream().noneMatch(f -> holds(f, List.of(item)))) {
                ids.add(item.id());
            }
        }
        return ids;
    }

    private Answer best() {
        for (Answer[] row : best) {
            Arrays.fill(row, NONE);
        }
        best[0][0] = new Answer(0, 0);
        boolean[][] held = new boolean[task.forms().size()][best.length];
        int[] widths = new int[best.length];
        for (int subset = 1; subset < best.length; subset++) {
            List<FittingItem> chosen = chosen(subset);
            for (FittingItem item : chosen) {
                widths[subset] += item.width() == Width.RELAY_PAIR ? 2 : 1;
            }
            for (int f = 0; f < held.length; f++) {
                held[f][subset] = namesMatch(chosen) && holds(task.forms().get(f), chosen);
            }
        }
        for (int placed = 0; placed < best.length; placed++) {
            for (int subset = placed; subset > 0; subset = (subset - 1) & placed) {
                for (int f = 0; f < held.length; f++) {
                    if (held[f][subset]) {
                        add(placed ^ subset, placed, task.forms().get(f), widths[subset]);
                    }
                }
            }
            for (int round = 0; round < task.sparePositions(); round++) {
                for (BlockForm form : task.forms()) {
                    add(placed, placed, form, 0);
                }
            }
        }
        return best[best.length - 1][task.sparePositions()];
    }

    private void add(int before, int after, BlockForm form, int width) {
        int empty = form.positions() - width;
        long micros = form.costMicros() + empty * form.emptyPositionMicros();
        for (int spare = 0; spare < best[before].length; spare++) {
            Answer answer = best[before][spare].plus(micros);
            for (int now = 0; now <= Math.min(spare + empty, task.sparePositions()); now++) {
                if (answer.compareTo(best[after][now]) < 0) {
                    best[after][now] = answer;
                }
            }
        }
    }

    /** Items that name one block are in it together, and no item that names another one is. */
    private boolean namesMatch(List<FittingItem> chosen) {
        List<String> names = listNames(chosen);
        return names.size() <= 1
                && items.stream()
                        .filter(item -> names.containsAll(listNames(List.of(item))))
                        .filter(item -> !listNames(List.of(item)).isEmpty())
                        .allMatch(chosen::contains);
    }

    private static List<String> listNames(List<FittingItem> items) {
        return items.stream()
                .flatMap(item -> item.place().filter(Place::fixed).stream())
                .map(Place::block)
                .distinct()
                .toList();
    }

    private List<FittingItem> chosen(int subset) {
        List<FittingItem> chosen = new ArrayList<>();
        for (int i = 0; i < items.size(); i++) {
            if ((subset >> i & 1) == 1) {
                chosen.add(items.get(i));
            }
        }
        return chosen;
    }

    /** Whether some form holds all items that name this block. */
    static boolean canHold(String name, List<FittingItem> items, List<BlockForm> forms) {
        List<FittingItem> members =
                items.stream().filter(item -> listNames(List.of(item)).contains(name)).toList();
        return forms.stream().anyMatch(form -> holds(form, members));
    }

    private static boolean holds(BlockForm form, List<FittingItem> chosen) {
        BigDecimal sum = BigDecimal.ZERO;
        for (FittingItem item : chosen) {
            if (item.heightMm() > form.clearanceMm()
                    || item.currentA() > form.maxPositionA()
                    || !item.place()
                            .filter(Place::fixed)
                            .flatMap(Place::type)
                            .map(form.block()::equals)
                            .orElse(true)
                    || !item.location().equals(chosen.getFirst().location())) {
                return false;
            }
            sum = sum.add(BigDecimal.valueOf(item.currentA()));
        }
        if (Double.isFinite(form.maxTotalA())
                && sum.compareTo(BigDecimal.valueOf(form.maxTotalA())) > 0) {
            return false;
        }
        return hasSeats(form, chosen, 0, new boolean[form.positions() + 2]);
    }

    private static boolean hasSeats(
            BlockForm form, List<FittingItem> chosen, int next, boolean[] taken) {
        if (next == chosen.size()) {
            return true;
        }
        boolean relay = chosen.get(next).width() == Width.RELAY_PAIR;
        int must =
                chosen.get(next)
                        .place()
                        .filter(Place::fixed)
                        .map(place -> place.firstPosition().orElse(0))
                        .orElse(0);
        for (int p = 1; p <= form.positions(); p++) {
            if (must > 0 && p != must) {
                continue;
            }
            boolean fits =
                    relay
                            ? form.relayPairStarts().contains(p) && !taken[p] && !taken[p + 1]
                            : !taken[p];
            if (fits) {
                taken[p] = true;
                taken[p + 1] |= relay;
                boolean seated = hasSeats(form, chosen, next + 1, taken);
                taken[p] = false;
                if (relay) {
                    taken[p + 1] = false;
                }
                if (seated) {
                    return true;
                }
            }
        }
        return false;
    }
}
