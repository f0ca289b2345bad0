package org.fusewright.core.fitting;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Every rule that an arrangement must keep, looked at one by one. */
final class Rules {

    private Rules() {}

    static void assertKept(FittingTask task, Arrangement arrangement) {
        String as = Drawing.text(task) + " -> " + Drawing.draw(arrangement);
        Map<String, FittingItem> items =
                task.items().stream()
                        .collect(Collectors.toMap(FittingItem::id, Function.identity()));
        List<String> seen = new ArrayList<>(arrangement.unplaced());
        long cost = 0;
        int free = 0;
        for (PlacedBlock block : arrangement.blocks()) {
            BlockForm form = block.form();
            assertThat(task.forms()).as(as).contains(form);
            Set<Integer> taken = new HashSet<>();
            BigDecimal sum = BigDecimal.ZERO;
            for (PlacedItem placed : block.items()) {
                FittingItem item = items.get(placed.item());
                seen.add(item.id());
                assertThat(item.location()).as(as).isEqualTo(block.location());
                assertThat(item.heightMm()).as(as).isLessThanOrEqualTo(form.clearanceMm());
                assertThat(item.currentA()).as(as).isLessThanOrEqualTo(form.maxPositionA());
                if (mustStay(item, arrangement)) {
                    Place place = item.place().orElseThrow();
                    assertThat(block.name()).as(as).contains(place.block());
                    place.type().ifPresent(type -> assertThat(form.block()).as(as).isEqualTo(type));
                    place.firstPosition()
                            .ifPresent(
                                    at -> assertThat(placed.firstPosition()).as(as).isEqualTo(at));
                }
                sum = sum.add(BigDecimal.valueOf(item.currentA()));
                int first = placed.firstPosition();
                assertThat(first).as(as).isBetween(1, form.positions());
                assertThat(taken.add(first)).as(as).isTrue();
                if (item.width() == Width.RELAY_PAIR) {
                    assertThat(form.relayPairStarts()).as(as).contains(first);
                    assertThat(taken.add(first + 1)).as(as).isTrue();
                }
            }
            if (Double.isFinite(form.maxTotalA())) {
                assertThat(sum).as(as).isLessThanOrEqualTo(BigDecimal.valueOf(form.maxTotalA()));
            }
            int empty = form.positions() - taken.size();
            free += empty;
            cost += form.costMicros() + empty * form.emptyPositionMicros();
        }
        List<String> names =
                arrangement.blocks().stream().flatMap(block -> block.name().stream()).toList();
        assertThat(names).as(as).doesNotHaveDuplicates();
        assertThat(seen).as(as).containsExactlyInAnyOrderElementsOf(items.keySet());
        assertThat(arrangement.costMicros()).as(as).isEqualTo(cost);
        assertThat(arrangement.lowerBoundMicros()).as(as).isLessThanOrEqualTo(cost);
        assertThat(arrangement.optimal())
                .as(as)
                .isEqualTo(arrangement.lowerBoundMicros() == arrangement.costMicros());
        if (arrangement.unplaced().size() == items.size()) {
            assertThat(arrangement.blocks()).as(as).isEmpty();
        } else {
            assertThat(free).as(as).isGreaterThanOrEqualTo(task.sparePositions());
        }
    }

    private static boolean mustStay(FittingItem item, Arrangement arrangement) {
        return item.place().isPresent()
                && !arrangement.released().contains(item.id())
                && !arrangement.moved().contains(item.id());
    }
}
