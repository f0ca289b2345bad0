package org.fusewright.core.fitting;

import org.fusewright.core.fitting.NamedBlocks.NamedBlock;
import org.fusewright.core.fitting.NamedBlocks.NarrowedForm;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The forms worth considering at a location, with their figures in arrays. First those of each
 * block that has a name, of which exactly one is used, once; then those used in any number. Price
 * and plug price count cost and blocks in one number, see {@link Weights}.
 */
final class FormTable {

    /**
     * What a millionth of the currency unit and a block weigh in a price. The one that counts
     * second never adds up to one of the first.
     */
    record Weights(long micro, long block) {

        static Weights of(FittingTask task, Aim aim) {
            long places = task.items().size() + task.sparePositions() + 1L;
            if (aim == Aim.LEAST_COST) {
                return new Weights(places, 1);
            }
            long dearest = 0;
            for (BlockForm form : task.forms()) {
                long plugs = form.emptyPositionMicros() * form.positions();
                dearest = Math.max(dearest, form.costMicros() + plugs);
            }
            return new Weights(1, dearest * places + 1);
        }

        /** What an arrangement costs at least, given the least price of any and its blocks. */
        long costAtLeast(long price, int blocks) {
            if (micro > 1) {
                return price / micro;
            }
            return price / block == blocks ? price % block : 0;
        }

        /** The lowest price from this one on, when every cost is a multiple of a step. */
        long roundUp(long price, long costStep) {
            if (price <= 0 || price >= Covers.IMPOSSIBLE) {
                return price;
            }
            if (micro == 1) {
                long cost = Math.ceilDiv(price % block, costStep) * costStep;
                return cost < block ? price / block * block + cost : (price / block + 1) * block;
            }
            long cost = price / micro / costStep * costStep;
            long blocks = price - cost * micro;
            return blocks < micro ? price : (cost + costStep) * micro;
        }
    }

    /** Narrowed to what the places of a named block leave. */
    final List<BlockForm> forms;

    /** The same without what a named block's places take away. */
    final List<BlockForm> whole;

    final int[] positions;
    final int[] pairs;
    final long[] limit;
    final long[] price;
    final long[] plug;
    final long lowestPlug;

    private final Weights weights;

    /** The cost of every block and every plug is a multiple of it. */
    private final long costStep;

    /** The name of each block that has one. */
    final List<String> names;

    /** Where the forms of each named block start, and after them the forms for any number. */
    private final int[] starts;

    private FormTable(Builder builder, Weights weights) {
        forms = List.copyOf(builder.forms);
        whole = List.copyOf(builder.whole);
        names = List.copyOf(builder.names);
        starts = builder.starts.stream().mapToInt(Integer::intValue).toArray();
        int count = forms.size();
        positions = new int[count];
        pairs = new int[count];
        limit = new long[count];
        price = new long[count];
        plug = new long[count];
        this.weights = weights;
        long lowest = Long.MAX_VALUE;
        long step = 0;
        for (int f = 0; f < count; f++) {
            BlockForm form = forms.get(f);
            positions[f] = form.positions();
            pairs[f] = form.relayPairStarts().size();
            limit[f] = MicroAmperes.limit(form.maxTotalA());
            price[f] = form.costMicros() * weights.micro + weights.block;
            plug[f] = form.emptyPositionMicros() * weights.micro;
            lowest = Math.min(lowest, plug[f]);
            step = commonDivisor(step, form.costMicros());
            step = commonDivisor(step, form.emptyPositionMicros());
        }
        lowestPlug = lowest;
        costStep = Math.max(1, step);
    }

    /** The forms that may be used in any number. */
    FormTable withoutNamed() {
        if (names.isEmpty()) {
            return this;
        }
        Builder builder = new Builder();
        builder.add(forms.subList(firstUnnamed(), size()));
        return new FormTable(builder, weights);
    }

    private static long commonDivisor(long a, long b) {
        return b == 0 ? a : commonDivisor(b, a % b);
    }

    private static final class Builder {
        private final List<BlockForm> forms = new ArrayList<>();
        private final List<BlockForm> whole = new ArrayList<>();
        private final List<String> names = new ArrayList<>();
        private final List<Integer> starts = new ArrayList<>();

        void add(NamedBlock block) {
            names.add(block.name());
            starts.add(forms.size());
            for (NarrowedForm form : block.forms()) {
                forms.add(form.narrowed());
                whole.add(form.whole());
            }
        }

        void add(List<BlockForm> unnamed) {
            starts.add(forms.size());
            forms.addAll(unnamed);
            whole.addAll(unnamed);
        }
    }

    static FormTable of(List<BlockForm> unnamed, NamedBlocks named, Weights weights) {
        Builder builder = new Builder();
        named.blocks().forEach(builder::add);
        builder.add(unnamed);
        return new FormTable(builder, weights);
    }

    /** Drops each form that another one replaces at no higher cost, and puts the rest in order. */
    static List<BlockForm> listWorthwhile(List<FittingItem> items, List<BlockForm> all) {
        List<BlockForm> kept = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            if (!isReplaceable(all, i)) {
                kept.add(all.get(i));
            }
        }
        return inOrder(items, kept);
    }

    /**
     * Forms that take the most items first: the cheap forms at the end then have a tight bound of
     * their own.
     */
    static List<BlockForm> inOrder(List<FittingItem> items, List<BlockForm> kept) {
        int[] taken = new int[kept.size()];
        for (int f = 0; f < taken.length; f++) {
            for (FittingItem item : items) {
                taken[f] += kept.get(f).takes(item) ? 1 : 0;
            }
        }
        List<BlockForm> ordered = new ArrayList<>();
        Comparator<Integer> mostTakenFirst =
                Comparator.comparingInt((Integer f) -> -taken[f])
                        .thenComparingInt(f -> -kept.get(f).positions());
        for (int f : Indexes.sorted(taken.length, mostTakenFirst)) {
            ordered.add(kept.get(f));
        }
        return ordered;
    }

    static boolean isReplaceable(List<BlockForm> all, int index) {
        BlockForm form = all.get(index);
        for (int i = 0; i < all.size(); i++) {
            BlockForm other = all.get(i);
            if (i != index && replaces(other, form) && (i < index || !replaces(form, other))) {
                return true;
            }
        }
        return false;
    }

    private static boolean replaces(BlockForm better, BlockForm form) {
        return better.positions() == form.positions()
                && better.relayPairStarts().size() >= form.relayPairStarts().size()
                && better.clearanceMm() >= form.clearanceMm()
                && better.maxTotalA() >= form.maxTotalA()
                && better.maxPositionA() >= form.maxPositionA()
                && better.costMicros() <= form.costMicros()
                && better.emptyPositionMicros() <= form.emptyPositionMicros();
    }

    /** Whether each named block can be one. */
    boolean hasFormForEachName() {
        for (int b = 0; b < names.size(); b++) {
            if (starts[b] == starts[b + 1]) {
                return false;
            }
        }
        return true;
    }

    int size() {
        return forms.size();
    }

    /** The first of the forms that may be used in any number. */
    int firstUnnamed() {
        return starts[names.size()];
    }

    boolean isNamed(int form) {
        return form < firstUnnamed();
    }

    /** The first form after those of the same named block. */
    int nextStart(int namedForm) {
        for (int start : starts) {
            if (start > namedForm) {
                return start;
            }
        }
        return forms.size();
    }

    Optional<String> findName(int form) {
        if (!isNamed(form)) {
            return Optional.empty();
        }
        return Optional.of(names.get(nameOf(form)));
    }

    /** The number of the named block that the form is one for. */
    int nameOf(int namedForm) {
        int block = 0;
        while (starts[block + 1] <= namedForm) {
            block++;
        }
        return block;
    }

    /** The lowest price from this one on that blocks and plugs can add up to, as far as told. */
    long roundUp(long price) {
        return weights.roundUp(price, costStep);
    }

    /** Whether the item may sit in a block of the form. */
    boolean takes(int form, FittingItem item) {
        return forms.get(form).takes(item)
                && (item.place().isEmpty()
                        || findName(form).filter(item.place().get().block()::equals).isPresent());
    }
}
