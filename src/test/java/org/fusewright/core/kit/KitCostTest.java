package org.fusewright.core.kit;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.catalogs.load.CatalogFolder;
import org.fusewright.core.catalog.BaggedSet;
import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.fitting.Arrangement;
import org.fusewright.core.fitting.BlockForm;
import org.fusewright.core.fitting.Fitter;
import org.fusewright.core.fitting.FittingItem;
import org.fusewright.core.fitting.PlacedBlock;
import org.fusewright.core.fitting.PlacedItem;
import org.fusewright.core.fitting.Width;
import org.fusewright.core.job.Job;
import org.fusewright.core.job.JobResolver;
import org.fusewright.core.job.ResolvedJob;
import org.fusewright.core.pricing.Stock;
import org.fusewright.core.sizing.PlacedStocks;
import org.fusewright.core.sizing.SizedJob;
import org.fusewright.core.sizing.Sizer;
import org.fusewright.jobs.load.JobReader;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * The kit beside every other: for small jobs each set of blocks is planned to its parts list. The
 * seats of each are found here, by trying. Lines of the parts list are compared before they are
 * rounded to a cent.
 */
class KitCostTest {

    private static final int JOBS = 60;

    private static final Catalog SAMPLE = CatalogFolder.read(Path.of("catalog-sample")).catalog();

    /** A job on its way to its kit, as far as no block is chosen. */
    private record Sized(ResolvedJob resolved, SizedJob sized, FittingModel model) {

        static Sized of(Job job, Catalog catalog) {
            Stock stock = Stock.of(catalog, job.currency());
            ResolvedJob resolved = JobResolver.resolve(job, stock);
            SizedJob sized = Sizer.size(resolved, PlacedStocks.of(stock));
            BuildableBlocks blocks = BuildableBlocks.Choice.of(stock).with(job.choices());
            FittingModel model =
                    FittingModel.of(sized, stock, blocks, job.choices().sparePositions());
            return new Sized(resolved, sized, model);
        }

        /** Before any line is rounded. */
        BigDecimal kitPrice(List<PlacedBlock> placed) {
            Arrangement arrangement =
                    new Arrangement(placed, 0, 0, true, List.of(), List.of(), List.of());
            List<KitBlock> blocks =
                    BlockAssembly.assemble(arrangement, sized, model.stock(), model.blocks());
            LeadEnds ends = LeadEnds.of(blocks);
            List<KitCircuit> circuits = ends.circuits(sized.circuits());
            List<KitFeed> feeds = ends.feeds(sized.feeds());
            List<WireLine> wire = WireLines.of(LeadEnds.listAll(circuits, feeds));
            List<PartLine> parts = PartsList.of(blocks, circuits, feeds, wire, resolved);
            return price(parts);
        }
    }

    /** Blocks that items are tried in, one location after the other. */
    private static final class Seats {
        private final Sized job;
        private final List<String> locations;
        private final List<FittingItem> relaysFirst;
        private final List<BlockForm> forms = new ArrayList<>();
        private final List<String> at = new ArrayList<>();
        private final List<List<PlacedItem>> seated = new ArrayList<>();
        private BigDecimal least = new BigDecimal("1e9");
        private int planned;

        Seats(Sized job) {
            this.job = job;
            locations =
                    job.model.task().items().stream()
                            .map(FittingItem::location)
                            .distinct()
                            .toList();
            relaysFirst =
                    job.model.task().items().stream()
                            .sorted(Comparator.comparing(FittingItem::width).reversed())
                            .toList();
        }

        /**
         * Every multiset of at most so many blocks more, in the order of kinds of block. None that
         * only adds to one that does: it needs all that this one needs, and more.
         */
        void tryAll(int kind, int more) {
            if (isWideEnough() && seat(0)) {
                planned++;
                least = least.min(job.kitPrice(placed()));
                seated.forEach(List::clear);
                return;
            }
            int kinds = job.model.task().forms().size() * locations.size();
            for (int next = kind; next < kinds && more > 0; next++) {
                forms.add(job.model.task().forms().get(next / locations.size()));
                at.add(locations.get(next % locations.size()));
                seated.add(new ArrayList<>());
                tryAll(next, more - 1);
                forms.removeLast();
                at.removeLast();
                seated.removeLast();
            }
        }

        private boolean isWideEnough() {
            int all = -job.model.task().sparePositions();
            for (String location : locations) {
                int free = 0;
                for (int b = 0; b < forms.size(); b++) {
                    free += at.get(b).equals(location) ? forms.get(b).positions() : 0;
                }
                for (FittingItem item : job.model.task().items()) {
                    boolean here = item.location().equals(location);
                    free -= !here ? 0 : item.width() == Width.RELAY_PAIR ? 2 : 1;
                }
                if (free < 0) {
                    return false;
                }
                all += free;
            }
            return all >= 0;
        }

        private List<PlacedBlock> placed() {
            List<PlacedBlock> blocks = new ArrayList<>();
            for (int b = 0; b < forms.size(); b++) {
                blocks.add(
                        new PlacedBlock(Optional.empty(), forms.get(b), at.get(b), seated.get(b)));
            }
            return blocks;
        }

        /** Relays come first: what they leave free in a block is then all one to a device. */
        private boolean seat(int index) {
            if (index == relaysFirst.size()) {
                return true;
            }
            FittingItem item = relaysFirst.get(index);
            boolean relay = item.width() == Width.RELAY_PAIR;
            for (int b = 0; b < forms.size(); b++) {
                if (!at.get(b).equals(item.location()) || !carries(b, item)) {
                    continue;
                }
                boolean tried = false;
                for (int p = 1; p <= forms.get(b).positions() && (relay || !tried); p++) {
                    if (isFree(b, p, item.width())) {
                        tried = true;
                        seated.get(b).add(new PlacedItem(item.id(), p));
                        if (seat(index + 1)) {
                            return true;
                        }
                        seated.get(b).removeLast();
                    }
                }
            }
            return false;
        }

        private boolean carries(int block, FittingItem item) {
            double sumA = item.currentA();
            for (PlacedItem other : seated.get(block)) {
                sumA += get(other).currentA();
            }
            BlockForm form = forms.get(block);
            return item.heightMm() <= form.clearanceMm()
                    && item.currentA() <= form.maxPositionA()
                    && sumA <= form.maxTotalA() + 1e-9;
        }

        private boolean isFree(int block, int position, Width width) {
            boolean relay = width == Width.RELAY_PAIR;
            if (relay && !forms.get(block).relayPairStarts().contains(position)) {
                return false;
            }
            int end = relay ? position + 1 : position;
            for (PlacedItem other : seated.get(block)) {
                int otherEnd =
                        get(other).width() == Width.RELAY_PAIR
                                ? other.firstPosition() + 1
                                : other.firstPosition();
                if (other.firstPosition() <= end && otherEnd >= position) {
                    return false;
                }
            }
            return true;
        }

        private FittingItem get(PlacedItem placed) {
            return job.model.task().items().stream()
                    .filter(item -> item.id().equals(placed.item()))
                    .findFirst()
                    .orElseThrow();
        }
    }

    private static Job job(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int circuits = 1 + random.nextInt(6);
        int locations = 1 + random.nextInt(2);
        StringBuilder all = new StringBuilder();
        for (int i = 0; i < circuits; i++) {
            all.append(i == 0 ? "" : ",")
                    .append("{\"id\":\"c" + i + "\",\"feed\":\"f\",\"runM\":1.2,\"location\":\"")
                    .append(random.nextInt(locations) == 0 ? "seat" : "tail")
                    .append("\",\"devices\":[\"")
                    .append(random.nextInt(3) == 0 ? "auto-reset" : "fuse")
                    .append("\"],")
                    .append(
                            random.nextInt(4) == 0
                                    ? "\"relay\":{\"triggerFrom\":\"controller\",\"triggerM\":1,"
                                            + "\"groundM\":1},"
                                    : "")
                    .append("\"loads\":[{\"kind\":\"resistive\",\"amps\":")
                    .append(0.5 + random.nextInt(24) / 2.0)
                    .append("}]}");
        }
        String text =
                "{\"reference\":\"K-%d\",\"supply\":{\"nominalV\":12},\"feeds\":[{\"id\":\"f\","
                        + "\"terminal\":\"30\",\"lengthM\":0.6,\"sourceDistanceM\":0.1}],"
                        + "\"circuits\":[%s],\"choices\":{\"sparePositions\":%d}}";
        byte[] document =
                text.formatted(seed, all, random.nextInt(3)).getBytes(StandardCharsets.UTF_8);
        return JobReader.read(document).getJob();
    }

    private static Catalog withoutSets() {
        return Catalog.of(
                "no sets",
                SAMPLE.listParts().stream().filter(part -> !(part instanceof BaggedSet)).toList(),
                SAMPLE.listOffers().stream()
                        .filter(offer -> !(SAMPLE.getPart(offer.part()) instanceof BaggedSet))
                        .toList());
    }

    private static BigDecimal price(List<PartLine> parts) {
        BigDecimal sum = BigDecimal.ZERO;
        for (PartLine line : parts) {
            sum = sum.add(line.unitPrice().getAmount().multiply(line.quantity()));
        }
        return sum;
    }

    private static boolean isOfOtherBlocks(Kit kit, Arrangement arrangement) {
        List<String> built = kit.blocks().stream().map(KitCostTest::looks).sorted().toList();
        return !built.equals(
                arrangement.blocks().stream().map(KitCostTest::looks).sorted().toList());
    }

    private static String looks(KitBlock block) {
        return block.location() + " " + block.block().number() + " " + block.cap().number();
    }

    private static String looks(PlacedBlock block) {
        return block.location() + " " + block.form().block() + " " + block.form().cap();
    }

    /** No set of blocks, up to one block more, makes a cheaper kit, in bags or by the piece. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void isTheCheapestKitOverAllSetsOfBlocks(boolean bags) {
        Catalog catalog = bags ? SAMPLE : withoutSets();
        KitPlanner planner = KitPlanner.of(catalog);
        int planned = 0;
        int decidedByBags = 0;
        for (long seed = 0; seed < JOBS; seed++) {
            Job job = job(seed);
            Kit kit = planner.plan(job);
            Sized sized = Sized.of(job, catalog);
            Arrangement byPiece = Fitter.fit(sized.model().task());
            if (!byPiece.unplaced().isEmpty()) {
                continue;
            }
            Seats seats = new Seats(sized);
            seats.tryAll(0, kit.blocks().size() + 1);
            planned++;
            decidedByBags += isOfOtherBlocks(kit, byPiece) ? 1 : 0;
            assertThat(price(kit.parts())).as("job " + seed).isEqualByComparingTo(seats.least);
            assertThat(kit.fit().optimal()).as("job " + seed).isTrue();
            assertThat(kit.fit().lowerBound()).as("job " + seed).isEqualTo(kit.fit().cost());
        }
        assertThat(planned).isGreaterThan(JOBS * 9 / 10);
        assertThat(decidedByBags).isBetween(bags ? 3 : 0, bags ? JOBS : 0);
    }
}
