package org.fusewright.core.kit;

import org.fusewright.core.fitting.Alternatives;
import org.fusewright.core.fitting.Alternatives.Alternative;
import org.fusewright.core.fitting.Arrangement;
import org.fusewright.core.fitting.Discount;
import org.fusewright.core.fitting.Fitter;
import org.fusewright.core.fitting.KnownDiscounts;
import org.fusewright.core.fitting.SeatedTask;
import org.fusewright.core.job.ArrangementKind;
import org.fusewright.core.sizing.SizedJob;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The arrangements of a job's blocks: the cheapest, and those that are best in something else. What
 * they cost is what the shop pays: by the piece, less what bagged sets save on the kit.
 */
final class Arranging {

    /**
     * An arrangement of the job's blocks.
     *
     * @param arrangement with its cost after what bags save
     * @param savedMicros what bags save
     */
    record Arranged(Arrangement arrangement, long savedMicros, List<KitBlock> blocks) {

        long byPieceMicros() {
            return arrangement.costMicros() + savedMicros;
        }
    }

    /** What the kit is built with, and what that is best in. */
    record Pick(Arranged arranged, ArrangementKind kind) {}

    private final FittingModel model;
    private final SizedJob sized;
    private final KnownDiscounts known;

    /** Empty where no bag can save anything. */
    private final Optional<BagSavings> savings;

    private final SeatedTask cheapestByPiece;
    private final List<KitBlock> blocksByPiece;
    private final Arranged cheapest;
    private final Alternatives others;

    private Arranging(FittingModel model, SizedJob sized, KnownDiscounts known) {
        this.model = model;
        this.sized = sized;
        this.known = known;
        cheapestByPiece = SeatedTask.of(model.task(), Fitter.fit(model.task()));
        blocksByPiece = assemble(cheapestByPiece.arrangement());
        savings =
                Optional.of(BagSavings.of(model, blocksByPiece, sized))
                        .filter(BagSavings::canBeAny);
        cheapest = arranged(cheapestByPiece, KnownDiscounts.ANY_NUMBER, blocksByPiece);
        others = new Alternatives(model.task(), cheapest.arrangement);
    }

    /**
     * @param known what was found out for other jobs, kept by the caller
     */
    static Arranging of(FittingModel model, SizedJob sized, KnownDiscounts known) {
        return new Arranging(model, sized, known);
    }

    FittingModel model() {
        return model;
    }

    /** The cheapest when bags are not looked at. */
    SeatedTask cheapestByPiece() {
        return cheapestByPiece;
    }

    /** What the kit would cost more with the blocks that are cheapest by the piece. */
    long lostByPieceMicros() {
        Arrangement byPiece = cheapestByPiece.arrangement();
        if (cheapest.arrangement.blocks() == byPiece.blocks()) {
            return 0;
        }
        long saved = savings.map(bags -> bags.micros(blocksByPiece)).orElse(0L);
        return byPiece.costMicros() - saved - cheapest.arrangement.costMicros();
    }

    Arranged cheapest() {
        return cheapest;
    }

    /** What was asked for; when it cannot be had, the cheapest. */
    Pick pick(ArrangementKind asked) {
        Optional<Arranged> found = find(asked);
        return new Pick(
                found.orElse(cheapest), found.isPresent() ? asked : ArrangementKind.CHEAPEST);
    }

    /** The best of its kind; empty when there is none. */
    Optional<Arranged> find(ArrangementKind kind) {
        return switch (kind) {
            case CHEAPEST -> Optional.of(cheapest);
            case FEWEST_BLOCKS -> Optional.of(arranged(others.fewestBlocks()));
            case MOST_SPARE -> Optional.of(arranged(others.mostSpare()));
            case COOLEST -> Optional.of(arranged(others.coolest()));
            case ONE_BLOCK_TYPE ->
                    others.ofOneBlockType().stream()
                            .map(this::arranged)
                            .min(Comparator.comparingLong(one -> one.arrangement.costMicros()));
        };
    }

    private List<KitBlock> assemble(Arrangement arrangement) {
        return BlockAssembly.assemble(arrangement, sized, model.stock(), model.blocks());
    }

    private Arranged arranged(Alternative byPiece) {
        Arrangement before = byPiece.arrangement();
        return arranged(
                SeatedTask.of(byPiece.task(), before), byPiece.mostBlocks(), assemble(before));
    }

    private Arranged arranged(SeatedTask task, int mostBlocks, List<KitBlock> blocks) {
        Arrangement before = task.arrangement();
        if (savings.isEmpty() || before.blocks().isEmpty()) {
            return new Arranged(before, 0, blocks);
        }
        if (!model.blocks().areOfOneFamily()) {
            long saved = savings.get().micros(blocks);
            long lowest = savings.get().lowestCostMicros(before.lowerBoundMicros());
            return new Arranged(before.lessDiscount(saved, lowest), saved, blocks);
        }
        Discount discount = savings.get().on(task.whole());
        Arrangement cheaper = known.find(task, mostBlocks, discount);
        return cheaper.blocks() == before.blocks()
                ? new Arranged(cheaper, before.costMicros() - cheaper.costMicros(), blocks)
                : withOtherBlocks(Alternatives.withFormsOf(model.task(), cheaper));
    }

    private Arranged withOtherBlocks(Arrangement arrangement) {
        long byPiece = Alternatives.byPieceMicros(arrangement, model.task());
        long saved = byPiece - arrangement.costMicros();
        return new Arranged(arrangement, saved, assemble(arrangement));
    }
}
