package org.fusewright.core.kit;

import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.fitting.BlockForm;
import org.fusewright.core.fitting.Discount;
import org.fusewright.core.fitting.FittingTask;
import org.fusewright.core.fitting.Prices;
import org.fusewright.core.kit.BuildableBlocks.FormParts;
import org.fusewright.core.pricing.Bags;
import org.fusewright.core.sizing.SizedJob;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * What bagged sets save on a kit, by the blocks that it has. Terminals, seals and all else that
 * does not hang on the blocks is counted once, from any arrangement of the same parts: so all
 * blocks take terminals of one family.
 */
final class BagSavings {

    /** What is not needed by some blocks may be by others: a wish to price it as high as can be. */
    private static final double HARDLY_ASKED = 0.001;

    private final Bags bags;
    private final FittingModel model;

    /** What is needed whatever the blocks, by the places of {@link Bags}. */
    private final int[] fixedNeed;

    /** All that is needed whatever the blocks, in bags or not. */
    private int pieces;

    /** Whether how many are needed hangs on the blocks. */
    private final boolean[] ofBlocks;

    private BagSavings(FittingModel model) {
        bags = model.stock().bags();
        this.model = model;
        fixedNeed = new int[bags.parts().size()];
        ofBlocks = new boolean[fixedNeed.length];
        for (FormParts parts : model.blocks().parts()) {
            parts.all().forEach(this::noteOfBlocks);
            parts.plug().ifPresent(plug -> noteOfBlocks(plug.number()));
        }
    }

    private void noteOfBlocks(PartNumber part) {
        int place = bags.placeOf(part);
        if (place >= 0) {
            ofBlocks[place] = true;
        }
    }

    /**
     * @param blocks that hold the parts of the job in any way
     */
    static BagSavings of(FittingModel model, List<KitBlock> blocks, SizedJob sized) {
        BagSavings savings = new BagSavings(model);
        for (KitBlock block : blocks) {
            for (Cavity cavity : block.cavities()) {
                if (cavity.occupant().isPresent()) {
                    cavity.occupant().get().terminal().ifPresent(savings::need);
                    cavity.occupant().get().seal().ifPresent(savings::need);
                } else if (isHeld(block, cavity)) {
                    cavity.plug().ifPresent(savings::need);
                }
            }
            block.seats().forEach(seat -> savings.need(seat.part()));
        }
        sized.circuits()
                .forEach(
                        circuit ->
                                circuit.splices().forEach(splice -> savings.need(splice.part())));
        sized.feeds()
                .forEach(
                        feed -> {
                            feed.mainDevice().ifPresent(savings::need);
                            feed.holder().ifPresent(savings::need);
                            feed.splices().forEach(splice -> savings.need(splice.part()));
                        });
        return savings;
    }

    private static boolean isHeld(KitBlock block, Cavity cavity) {
        for (KitBlock.Seat seat : block.seats()) {
            if (seat.positions().contains(cavity.position())) {
                return true;
            }
        }
        return false;
    }

    private void need(Part part) {
        pieces++;
        count(fixedNeed, part);
    }

    private void count(int[] need, Part part) {
        int place = bags.placeOf(part.number());
        if (place >= 0) {
            need[place]++;
        }
    }

    /** Whether a bag could cost less than what it holds of use, whatever the blocks. */
    boolean canBeAny() {
        for (int s = 0; s < bags.sets().size(); s++) {
            long worth = 0;
            for (int p = 0; p < fixedNeed.length; p++) {
                int content = bags.content(s, p);
                int useful = ofBlocks[p] ? content : Math.min(content, fixedNeed[p]);
                worth += useful * bags.pieceMicros(p);
            }
            if (worth > bags.bagMicros(s)) {
                return true;
            }
        }
        return false;
    }

    /** What bags save on the parts of these blocks and all that does not hang on them. */
    long micros(List<KitBlock> blocks) {
        int[] need = fixedNeed.clone();
        for (KitBlock block : blocks) {
            count(need, block.block());
            count(need, block.cap());
            block.wedge().ifPresent(wedge -> count(need, wedge));
            for (Cavity cavity : block.cavities()) {
                if (!isHeld(block, cavity)) {
                    cavity.plug().ifPresent(plug -> count(need, plug));
                }
            }
        }
        return bags.savedMicros(need);
    }

    /**
     * What any blocks cost at least, after what bags save, when they cost so much by the piece;
     * where terminals may be of another family. No bag is worth more than it costs at prices that
     * are all lower by the largest share that a bag saves.
     */
    long lowestCostMicros(long byPieceMicros) {
        double share = 0;
        for (int s = 0; s < bags.sets().size(); s++) {
            long worth = 0;
            for (int p = 0; p < fixedNeed.length; p++) {
                worth += bags.content(s, p) * bags.pieceMicros(p);
            }
            share = worth == 0 ? share : Math.max(share, 1 - (double) bags.bagMicros(s) / worth);
        }
        long dearest = 0;
        for (int p = 0; p < fixedNeed.length; p++) {
            dearest = Math.max(dearest, bags.pieceMicros(p));
        }
        double least = byPieceMicros - share * (byPieceMicros + (double) pieces * dearest);
        return (long) Math.floor(Math.max(0, least));
    }

    /** The savings by the forms of a task: those of the model, or some of them. */
    Discount on(FittingTask task) {
        List<FormParts> parts = new ArrayList<>();
        for (BlockForm form : task.forms()) {
            parts.add(model.blocks().partsOf(form));
        }
        return new ByForm(parts);
    }

    private final class ByForm implements Discount {
        private final int[][] places;
        private final int plug;

        ByForm(List<FormParts> forms) {
            places = new int[forms.size()][];
            for (int f = 0; f < places.length; f++) {
                places[f] =
                        forms.get(f).all().stream()
                                .mapToInt(bags::placeOf)
                                .filter(place -> place >= 0)
                                .toArray();
            }
            plug =
                    forms.stream()
                            .findFirst()
                            .flatMap(FormParts::plug)
                            .map(p -> bags.placeOf(p.number()))
                            .orElse(-1);
        }

        @Override
        public long micros(int[] blocks, int emptyPositions) {
            return bags.savedMicros(need(blocks, emptyPositions));
        }

        private int[] need(int[] blocks, int emptyPositions) {
            int[] need = fixedNeed.clone();
            for (int f = 0; f < blocks.length; f++) {
                for (int place : places[f]) {
                    need[place] += blocks[f];
                }
            }
            if (plug >= 0) {
                need[plug] += BuildableBlocks.PLUGS_A_POSITION * emptyPositions;
            }
            return need;
        }

        @Override
        public Most mostNear(int[] blocks, int emptyPositions) {
            long[] least = leastPrices(need(blocks, emptyPositions));
            long fixed = 0;
            for (int p = 0; p < fixedNeed.length; p++) {
                fixed += fixedNeed[p] * (bags.pieceMicros(p) - least[p]);
            }
            long[] blockMicros = new long[places.length];
            for (int f = 0; f < blockMicros.length; f++) {
                for (int place : places[f]) {
                    blockMicros[f] += bags.pieceMicros(place) - least[place];
                }
            }
            long empty =
                    plug < 0
                            ? 0
                            : BuildableBlocks.PLUGS_A_POSITION
                                    * (bags.pieceMicros(plug) - least[plug]);
            return new Most(fixed, blockMicros, empty);
        }

        /**
         * Prices of pieces, none above its own, at which no bag is worth more than it costs: so no
         * bags cover any need for less. Of these the ones at which this need is worth most.
         */
        private long[] leastPrices(int[] need) {
            int parts = need.length;
            int sets = bags.sets().size();
            double[][] give = new double[parts][sets + parts];
            double[] asked = new double[parts];
            double[] cost = new double[sets + parts];
            for (int s = 0; s < sets; s++) {
                cost[s] = Math.max(1, bags.bagMicros(s));
            }
            for (int p = 0; p < parts; p++) {
                for (int s = 0; s < sets; s++) {
                    give[p][s] = bags.content(s, p);
                }
                give[p][sets + p] = 1;
                cost[sets + p] = Math.max(1, bags.pieceMicros(p));
                asked[p] = ofBlocks[p] ? Math.max(need[p], HARDLY_ASKED) : need[p];
            }
            double[] prices = Prices.find(give, asked, cost, 0);
            long[] least = new long[parts];
            for (int p = 0; p < parts; p++) {
                least[p] = Math.min(bags.pieceMicros(p), (long) Math.floor(prices[p]));
            }
            return least;
        }

        @Override
        public List<Integer> key() {
            return Arrays.stream(fixedNeed).boxed().toList();
        }
    }
}
