package org.fusewright.core.fitting;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The blocks of a location that items name, and the forms that each can have. A form is narrowed to
 * the relay pairs that the items with a position leave whole.
 */
record NamedBlocks(List<NamedBlock> blocks) {

    /**
     * @param members items that sit in it
     * @param forms none when no form holds the members together in their positions
     */
    record NamedBlock(String name, List<FittingItem> members, List<NarrowedForm> forms) {}

    /** A form and what is left of it; its positions stay as they are. */
    record NarrowedForm(BlockForm whole, BlockForm narrowed) {}

    /**
     * @param all whether forms are listed too that another one replaces at no higher cost
     */
    static NamedBlocks of(List<FittingItem> items, List<BlockForm> forms, boolean all) {
        Map<String, List<FittingItem>> byName = new LinkedHashMap<>();
        for (FittingItem item : items) {
            item.place()
                    .ifPresent(
                            place ->
                                    byName.computeIfAbsent(place.block(), n -> new ArrayList<>())
                                            .add(item));
        }
        List<NamedBlock> blocks = new ArrayList<>();
        byName.forEach(
                (name, members) ->
                        blocks.add(new NamedBlock(name, members, formsFor(members, forms, all))));
        return new NamedBlocks(blocks);
    }

    /** Whether some form holds these items together, each in its position. */
    static boolean holdTogether(List<FittingItem> members, List<BlockForm> forms) {
        for (BlockForm form : forms) {
            if (narrow(form, members).isPresent()) {
                return true;
            }
        }
        return false;
    }

    private static List<NarrowedForm> formsFor(
            List<FittingItem> members, List<BlockForm> forms, boolean all) {
        List<NarrowedForm> fitting = new ArrayList<>();
        for (BlockForm form : forms) {
            narrow(form, members)
                    .ifPresent(narrowed -> fitting.add(new NarrowedForm(form, narrowed)));
        }
        List<BlockForm> narrowed = fitting.stream().map(NarrowedForm::narrowed).toList();
        List<NarrowedForm> kept = new ArrayList<>();
        for (int i = 0; i < fitting.size(); i++) {
            if (all || !FormTable.isReplaceable(narrowed, i)) {
                kept.add(fitting.get(i));
            }
        }
        return kept;
    }

    /** The form without the pairs that a device in its position cuts; empty when it cannot be. */
    private static Optional<BlockForm> narrow(BlockForm form, List<FittingItem> members) {
        boolean[] taken = new boolean[form.positions() + 2];
        boolean[] cut = new boolean[form.positions() + 2];
        int width = 0;
        int relays = 0;
        long current = 0;
        for (FittingItem item : members) {
            Place place = item.place().orElseThrow();
            if (!form.takes(item) || !place.type().map(form.block()::equals).orElse(true)) {
                return Optional.empty();
            }
            boolean relay = item.width() == Width.RELAY_PAIR;
            width += item.width().positions();
            relays += relay ? 1 : 0;
            current += MicroAmperes.of(item.currentA());
            if (place.firstPosition().isPresent()) {
                int first = place.firstPosition().getAsInt();
                if (first > form.positions()
                        || taken[first]
                        || (relay
                                && (taken[first + 1] || !form.relayPairStarts().contains(first)))) {
                    return Optional.empty();
                }
                taken[first] = true;
                cut[first] |= !relay;
                taken[first + 1] |= relay;
            }
        }
        List<Integer> pairs = new ArrayList<>();
        for (int start : form.relayPairStarts()) {
            if (!cut[start] && !cut[start + 1]) {
                pairs.add(start);
            }
        }
        return width <= form.positions()
                        && relays <= pairs.size()
                        && current <= MicroAmperes.limit(form.maxTotalA())
                ? Optional.of(form.withRelayPairs(pairs))
                : Optional.empty();
    }
}
