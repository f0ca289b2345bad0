package org.fusewright.orders.web;

import org.fusewright.core.order.Cover;
import org.fusewright.core.order.Cover.CoverLine;
import org.fusewright.core.order.PartDemand;
import org.fusewright.core.order.PurchaseOrder.OrderLine;
import org.fusewright.core.words.Text;
import org.fusewright.orders.OrderSummary;
import org.fusewright.orders.Proposal;
import org.fusewright.orders.StoredOrder;
import org.joda.money.Money;
import org.jspecify.annotations.Nullable;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

/** Orders and proposals as the interface answers them. */
final class OrderDocument {
    private OrderDocument() {}

    record DemandEntry(
            String part,
            BigDecimal needed,
            BigDecimal waste,
            BigDecimal minimum,
            BigDecimal onHand,
            BigDecimal ordered,
            int toBuy) {
        static DemandEntry of(PartDemand demand) {
            return new DemandEntry(
                    demand.part().value(),
                    demand.needed(),
                    demand.waste(),
                    demand.minimum(),
                    demand.onHand(),
                    demand.ordered(),
                    demand.toBuy());
        }
    }

    record ProposedLine(
            String part,
            String supplier,
            int packSize,
            int quantity,
            BigDecimal unitPrice,
            BigDecimal price,
            int leadTimeDays) {
        static ProposedLine of(CoverLine line) {
            return new ProposedLine(
                    line.offer().part().value(),
                    line.offer().supplier(),
                    line.offer().packSize(),
                    line.quantity(),
                    line.offer().unitPriceAt(line.quantity()).getAmount(),
                    line.extended().getAmount(),
                    line.offer().leadTimeDays());
        }
    }

    record Share(String supplier, int lines, BigDecimal value, @Nullable BigDecimal minimum) {}

    record Reason(String part, @Nullable String supplier, String reason) {}

    record ProposalDocument(
            String version,
            String currency,
            @Nullable LocalDate wantedBy,
            BigDecimal wirePercent,
            List<DemandEntry> demand,
            List<ProposedLine> lines,
            List<Share> suppliers,
            BigDecimal total,
            boolean optimal,
            BigDecimal lowerBound,
            @Nullable BigDecimal naive,
            BigDecimal saving,
            List<Reason> uncovered,
            List<Reason> leftAside,
            List<String> notes) {
        static ProposalDocument of(Proposal proposal) {
            Cover cover = proposal.cover();
            return new ProposalDocument(
                    proposal.version(),
                    proposal.wishes().currency().getCode(),
                    proposal.wishes().wantedBy().orElse(null),
                    proposal.wishes().wirePercent(),
                    proposal.demands().stream().map(DemandEntry::of).toList(),
                    cover.lines().stream().map(ProposedLine::of).toList(),
                    cover.shares().stream()
                            .map(
                                    share ->
                                            new Share(
                                                    share.supplier(),
                                                    share.lines(),
                                                    share.value().getAmount(),
                                                    share.minimum()
                                                            .map(Money::getAmount)
                                                            .orElse(null)))
                            .toList(),
                    cover.total().getAmount(),
                    cover.isOptimal(),
                    cover.bound().getAmount(),
                    cover.naive().map(Money::getAmount).orElse(null),
                    cover.saving().getAmount(),
                    cover.uncovered().stream()
                            .map(
                                    one ->
                                            new Reason(
                                                    one.part().value(),
                                                    null,
                                                    one.reason().english()))
                            .toList(),
                    cover.leftAside().stream()
                            .map(
                                    one ->
                                            new Reason(
                                                    one.offer().part().value(),
                                                    one.offer().supplier(),
                                                    one.reason().english()))
                            .toList(),
                    proposal.notes().stream().map(Text::english).toList());
        }
    }

    record Line(
            int line,
            String part,
            String title,
            String unit,
            int packSize,
            int quantity,
            BigDecimal unitPrice,
            BigDecimal price,
            BigDecimal received,
            BigDecimal open) {
        static Line of(StoredOrder order, OrderLine line) {
            return new Line(
                    line.line(),
                    line.part().value(),
                    line.title(),
                    line.unit(),
                    line.packSize(),
                    line.quantity(),
                    line.unitPrice().getAmount(),
                    line.price().getAmount(),
                    order.receivedOf(line),
                    order.openOf(line));
        }
    }

    record DeliveredLine(int line, BigDecimal quantity) {}

    record DeliveryEntry(String note, Instant receivedAt, List<DeliveredLine> lines) {
        static DeliveryEntry of(StoredOrder.Delivery delivery) {
            return new DeliveryEntry(
                    delivery.note(),
                    delivery.receivedAt(),
                    delivery.lines().entrySet().stream()
                            .map(line -> new DeliveredLine(line.getKey(), line.getValue()))
                            .toList());
        }
    }

    record Full(
            long id,
            String number,
            String state,
            String supplier,
            String supplierTitle,
            String currency,
            @Nullable LocalDate orderedOn,
            @Nullable LocalDate wantedBy,
            BigDecimal total,
            List<Line> lines,
            List<DeliveryEntry> deliveries) {
        static Full of(StoredOrder order) {
            return new Full(
                    order.id(),
                    order.order().number(),
                    order.state().code(),
                    order.order().supplierCode(),
                    order.order().supplierName(),
                    order.order().currency().getCode(),
                    order.order().orderedOn().orElse(null),
                    order.order().wantedBy().orElse(null),
                    order.order().total().getAmount(),
                    order.order().lines().stream().map(line -> Line.of(order, line)).toList(),
                    order.deliveries().stream().map(DeliveryEntry::of).toList());
        }
    }

    /** An order in a list. */
    record Entry(
            long id,
            String number,
            String state,
            String supplierTitle,
            @Nullable LocalDate orderedOn,
            @Nullable LocalDate wantedBy,
            int lines,
            BigDecimal total,
            String currency) {
        static Entry of(OrderSummary order) {
            return new Entry(
                    order.id(),
                    order.number(),
                    order.state().code(),
                    order.supplierName(),
                    order.orderedOn().orElse(null),
                    order.wantedBy().orElse(null),
                    order.lines(),
                    order.total().getAmount(),
                    order.total().getCurrencyUnit().getCode());
        }
    }
}
