package org.fusewright.core.quote;

import org.fusewright.core.kit.Cavity;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitBlock;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.ToIntFunction;
import java.util.stream.Stream;

/** The kinds of bench work by the codes of {@code labour.csv}, and how often a kit needs each. */
enum BenchWork {
    /** A lead, cut and stripped. */
    CUT("cut", kit -> kit.wire().stream().mapToInt(line -> line.leads().size()).sum()),
    /** A terminal of the blocks with its seal. */
    CRIMP("crimp", kit -> countCavities(kit, BenchWork::isCrimped)),
    /** A cavity with its terminal. */
    LOAD("load", kit -> countCavities(kit, cavity -> cavity.occupant().isPresent())),
    PLUG("plug", kit -> countCavities(kit, cavity -> cavity.plug().isPresent())),
    /** A device or relay in a block. */
    DEVICE("device", kit -> kit.blocks().stream().mapToInt(block -> block.seats().size()).sum()),
    BLOCK("block", kit -> kit.blocks().size()),
    SPLICE("splice", BenchWork::countSplices),
    /** A main device's holder. */
    HOLDER("holder", BenchWork::countHolders),
    /** A circuit, from end to end. */
    TEST("test", kit -> kit.circuits().size()),
    /** The bag as a whole. */
    PACK("pack", _ -> 1);

    private final String code;
    private final ToIntFunction<Kit> count;

    BenchWork(String code, ToIntFunction<Kit> count) {
        this.code = code;
        this.count = count;
    }

    String code() {
        return code;
    }

    int countIn(Kit kit) {
        return count.applyAsInt(kit);
    }

    static Optional<BenchWork> parse(String code) {
        return Stream.of(values()).filter(work -> work.code.equals(code)).findFirst();
    }

    private static boolean isCrimped(Cavity cavity) {
        return cavity.occupant().flatMap(Cavity.Occupant::terminal).isPresent();
    }

    private static int countCavities(Kit kit, Predicate<Cavity> counts) {
        return (int)
                kit.blocks().stream()
                        .map(KitBlock::cavities)
                        .flatMap(List::stream)
                        .filter(counts)
                        .count();
    }

    private static int countSplices(Kit kit) {
        return kit.circuits().stream().mapToInt(c -> c.sized().splices().size()).sum()
                + kit.feeds().stream().mapToInt(feed -> feed.sized().splices().size()).sum();
    }

    private static int countHolders(Kit kit) {
        return (int) kit.feeds().stream().filter(f -> f.sized().holder().isPresent()).count();
    }
}
