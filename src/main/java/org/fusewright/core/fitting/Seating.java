package org.fusewright.core.fitting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Seats the items of one block. Of all ways to seat them the best, in this order:
 *
 * <ol>
 *   <li>most items next to the one that they like to sit beside;
 *   <li>fewest neighbours that both carry more than half of what one position may carry;
 *   <li>the first item of the job at the lowest position, then the second, and so on.
 * </ol>
 *
 * <p>The best of all when the block has no more than eight positions; above that the search ends
 * after {@value #MOST_STEPS} steps with the best found.
 */
final class Seating {

    private static final int MOST_STEPS = 200_000;

    private static final int EMPTY = -1;

    private final Filling filling;
    private final Site site;
    private final int block;
    private final int positions;
    private final boolean[] pairStart;
    private final int[] members;
    private final boolean[] hot;
    private final boolean[] alike;
    private final int wishes;

    /** The position that a member must have; 0 for any. */
    private final int[] fixedAt;

    /** The member that must sit at a position; {@link #EMPTY} for none. */
    private final int[] fixedHere;

    private final int[] seatOf;
    private final boolean[] seated;
    private int steps;
    private int[] best = {};
    private int bestBeside = -1;
    private int bestHot;

    private Seating(Filling filling, int block, int[] members) {
        this.filling = filling;
        this.block = block;
        this.members = members;
        site = filling.site;
        BlockForm form = site.table.forms.get(filling.form[block]);
        positions = form.positions();
        pairStart = new boolean[positions + 2];
        for (int start : form.relayPairStarts()) {
            pairStart[start] = true;
        }
        hot = new boolean[members.length];
        alike = new boolean[members.length];
        boolean[] wished = new boolean[members.length];
        int count = 0;
        for (int m = 0; m < members.length; m++) {
            hot[m] = 2 * site.items.get(members[m]).currentA() > form.maxPositionA();
            int other = Arrays.binarySearch(members, site.besides[members[m]]);
            if (other >= 0) {
                wished[m] = true;
                wished[other] = true;
                count++;
            }
        }
        fixedAt = new int[members.length];
        fixedHere = new int[positions + 2];
        Arrays.fill(fixedHere, EMPTY);
        for (int m = 0; m < members.length; m++) {
            FittingItem item = site.items.get(members[m]);
            fixedAt[m] = item.place().map(Place::firstPosition).map(p -> p.orElse(0)).orElse(0);
            if (fixedAt[m] > 0) {
                fixedHere[fixedAt[m]] = m;
            }
            alike[m] = !wished[m] && fixedAt[m] == 0;
        }
        wishes = count;
        seatOf = new int[members.length];
        seated = new boolean[members.length];
    }

    /** The blocks of a location with their items seated, in the job's order. */
    static List<PlacedBlock> seat(Filling filling) {
        int[][] members = new int[filling.blocks()][];
        for (int b = 0; b < members.length; b++) {
            members[b] = membersOf(filling, b);
        }
        int[] inOrder =
                Indexes.sorted(
                        members.length,
                        Comparator.comparingInt(
                                b -> members[b].length == 0 ? Integer.MAX_VALUE : members[b][0]));
        List<PlacedBlock> placed = new ArrayList<>();
        for (int b : inOrder) {
            placed.add(new Seating(filling, b, members[b]).seat());
        }
        return placed;
    }

    private static int[] membersOf(Filling filling, int block) {
        int[] members = new int[filling.site.size()];
        int count = 0;
        for (int i = 0; i < members.length; i++) {
            if (filling.blockOf[i] == block) {
                members[count++] = i;
            }
        }
        return Arrays.copyOf(members, count);
    }

    private PlacedBlock seat() {
        place(1, EMPTY, 0, 0, filling.free(block), 0);
        List<PlacedItem> items = new ArrayList<>();
        for (int m = 0; m < members.length; m++) {
            items.add(new PlacedItem(site.items.get(members[m]).id(), best[m]));
        }
        items.sort(Comparator.comparingInt(PlacedItem::firstPosition));
        int form = filling.form[block];
        return new PlacedBlock(
                site.table.findName(form), site.table.whole.get(form), site.location, items);
    }

    /**
     * Tries what may come at a position and after it.
     *
     * @param left the member just before the position, or {@link #EMPTY}
     */
    private void place(int position, int left, int beside, int hotPairs, int free, int count) {
        if (position > positions) {
            keepIfBetter(beside, hotPairs);
            return;
        }
        if (bestBeside >= 0 && (++steps > MOST_STEPS || isHopeless(beside, hotPairs, count))) {
            return;
        }
        boolean triedCool = false;
        boolean triedHot = false;
        boolean triedCoolRelay = false;
        boolean triedHotRelay = false;
        for (int m = 0; m < members.length; m++) {
            boolean relay = site.relay[members[m]];
            if (seated[m] || (relay && !pairStart[position]) || !mayTake(m, position)) {
                continue;
            }
            if (alike[m]) {
                // Of items that differ only in the job's order the earliest comes first.
                if (relay
                        ? (hot[m] ? triedHotRelay : triedCoolRelay)
                        : (hot[m] ? triedHot : triedCool)) {
                    continue;
                }
                triedHotRelay |= relay && hot[m];
                triedCoolRelay |= relay && !hot[m];
                triedHot |= !relay && hot[m];
                triedCool |= !relay && !hot[m];
            }
            seated[m] = true;
            seatOf[m] = position;
            int besideNow = beside + (left != EMPTY ? wishesBetween(left, m) : 0);
            int hotNow = hotPairs + (left != EMPTY && hot[left] && hot[m] ? 1 : 0);
            place(position + (relay ? 2 : 1), m, besideNow, hotNow, free, count + 1);
            seated[m] = false;
        }
        if (free > 0 && fixedHere[position] == EMPTY) {
            place(position + 1, EMPTY, beside, hotPairs, free - 1, count);
        }
    }

    private boolean mayTake(int member, int position) {
        boolean relay = site.relay[members[member]];
        return fixedAt[member] == position
                || (fixedAt[member] == 0
                        && fixedHere[position] == EMPTY
                        && (!relay || fixedHere[position + 1] == EMPTY));
    }

    private int wishesBetween(int a, int b) {
        return (site.besides[members[a]] == members[b] ? 1 : 0)
                + (site.besides[members[b]] == members[a] ? 1 : 0);
    }

    private boolean isHopeless(int beside, int hotPairs, int count) {
        int most = Math.min(wishes, beside + 2 * (members.length - count));
        return most < bestBeside || (most == bestBeside && hotPairs > bestHot);
    }

    private void keepIfBetter(int beside, int hotPairs) {
        if (beside > bestBeside
                || (beside == bestBeside
                        && (hotPairs < bestHot
                                || (hotPairs == bestHot && Arrays.compare(seatOf, best) < 0)))) {
            bestBeside = beside;
            bestHot = hotPairs;
            best = seatOf.clone();
        }
    }
}
