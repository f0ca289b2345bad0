package org.fusewright.core.quote;

import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.check.Subject;
import org.fusewright.core.check.Verdict;
import org.fusewright.core.kit.Cavity;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitBlock;
import org.fusewright.core.kit.KitLead;
import org.fusewright.core.sizing.SizedSplice;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * What of one kit belongs to one device with all behind it, or to the feeds: parts, bench work and
 * checks. Blocks, caps, wedges, plugs, bags and spares belong to all together and are in no share.
 *
 * @param needs pieces, or metres of wire
 * @param work how often each kind of bench work is done
 */
record KitShare(
        Map<PartNumber, Double> needs, Map<BenchWork, Integer> work, long fails, long cautions) {

    /** The name of the share of the feeds. */
    static final String FEEDS = "";

    /** These depend on what else sits in the block, or on all devices of a feed. */
    private static final Set<CheckCode> OF_ALL_TOGETHER =
            EnumSet.of(
                    CheckCode.CAP_CLEARANCE,
                    CheckCode.BLOCK_CURRENT,
                    CheckCode.PLACE_KEPT,
                    CheckCode.SELECTIVITY);

    /** All shares of a kit, by the circuit that owns the device. */
    static Map<String, KitShare> listIn(Kit kit) {
        return new Sorting(kit).shares();
    }

    private static final class Sorting {

        private final Kit kit;
        private final Map<String, String> owners = new HashMap<>();
        private final Map<String, Map<PartNumber, Double>> needs = new TreeMap<>();
        private final Map<String, Map<BenchWork, Integer>> work = new HashMap<>();
        private final Map<String, long[]> verdicts = new HashMap<>();

        Sorting(Kit kit) {
            this.kit = kit;
            kit.circuits()
                    .forEach(
                            circuit -> {
                                String id = circuit.sized().id();
                                String owner =
                                        circuit.sized()
                                                .resolved()
                                                .circuit()
                                                .contactFrom()
                                                .orElse(id);
                                owners.put(id, owner);
                                open(owner);
                            });
            open(FEEDS);
            Map<String, String> leadOwners = new HashMap<>();
            kit.circuits().forEach(circuit -> addLeads(circuit.leads(), leadOwners));
            kit.feeds().forEach(feed -> addLeads(feed.leads(), leadOwners));
            kit.circuits()
                    .forEach(
                            circuit ->
                                    addSplices(
                                            owners.get(circuit.sized().id()),
                                            circuit.sized().splices()));
            kit.feeds()
                    .forEach(
                            feed -> {
                                addSplices(FEEDS, feed.sized().splices());
                                feed.sized().mainDevice().ifPresent(p -> need(FEEDS, p.number()));
                                feed.sized().holder().ifPresent(p -> need(FEEDS, p.number()));
                                feed.sized()
                                        .holder()
                                        .ifPresent(_ -> work(FEEDS, BenchWork.HOLDER, 1));
                            });
            kit.blocks().forEach(block -> addBlock(block, leadOwners));
            kit.checks().forEach(this::count);
        }

        private void open(String share) {
            needs.computeIfAbsent(share, _ -> new TreeMap<>());
            work.computeIfAbsent(share, _ -> new EnumMap<>(BenchWork.class));
            verdicts.computeIfAbsent(share, _ -> new long[2]);
        }

        private void need(String share, PartNumber part) {
            needs.get(share).merge(part, 1.0, Double::sum);
        }

        private void work(String share, BenchWork kind, int times) {
            work.get(share).merge(kind, times, Integer::sum);
        }

        private void addLeads(List<KitLead> leads, Map<String, String> leadOwners) {
            for (KitLead lead : leads) {
                String share = owners.getOrDefault(lead.owner(), FEEDS);
                leadOwners.put(lead.lead().id(), share);
                needs.get(share)
                        .merge(
                                lead.lead().wire().number(),
                                lead.lead().cut().value() / 1000.0,
                                Double::sum);
                work(share, BenchWork.CUT, 1);
            }
        }

        private void addSplices(String share, List<SizedSplice> splices) {
            splices.forEach(splice -> need(share, splice.part().number()));
            work(share, BenchWork.SPLICE, splices.size());
        }

        private void addBlock(KitBlock block, Map<String, String> leadOwners) {
            for (KitBlock.Seat seat : block.seats()) {
                String share = owners.get(seat.circuit());
                need(share, seat.part().number());
                work(share, BenchWork.DEVICE, 1);
            }
            for (Cavity cavity : block.cavities()) {
                cavity.occupant()
                        .ifPresent(
                                occupant -> {
                                    String share =
                                            leadOwners.getOrDefault(occupant.lead().id(), FEEDS);
                                    occupant.terminal().ifPresent(t -> need(share, t.number()));
                                    occupant.seal().ifPresent(s -> need(share, s.number()));
                                    work(share, BenchWork.LOAD, 1);
                                    occupant.terminal()
                                            .ifPresent(_ -> work(share, BenchWork.CRIMP, 1));
                                });
            }
        }

        private void count(Check check) {
            boolean isShared =
                    OF_ALL_TOGETHER.contains(check.code())
                            || check.subject().scope() == Subject.Scope.BLOCK
                            || (check.subject().scope() == Subject.Scope.JOB
                                    && check.code() == CheckCode.STOCKED);
            if (isShared || check.verdict() == Verdict.PASS) {
                return;
            }
            String share =
                    check.subject().scope() == Subject.Scope.CIRCUIT
                            ? owners.get(check.subject().id())
                            : FEEDS;
            verdicts.get(share)[check.verdict() == Verdict.FAIL ? 0 : 1]++;
        }

        Map<String, KitShare> shares() {
            Map<String, KitShare> shares = new TreeMap<>();
            needs.forEach(
                    (share, parts) ->
                            shares.put(
                                    share,
                                    new KitShare(
                                            parts,
                                            work.get(share),
                                            verdicts.get(share)[0],
                                            verdicts.get(share)[1])));
            return shares;
        }
    }
}
