package org.fusewright.papers;

import com.helger.ubl21.UBL21Marshaller;

import oasis.names.specification.ubl.schema.xsd.commonaggregatecomponents_21.CustomerPartyType;
import oasis.names.specification.ubl.schema.xsd.commonaggregatecomponents_21.DeliveryType;
import oasis.names.specification.ubl.schema.xsd.commonaggregatecomponents_21.ItemIdentificationType;
import oasis.names.specification.ubl.schema.xsd.commonaggregatecomponents_21.ItemType;
import oasis.names.specification.ubl.schema.xsd.commonaggregatecomponents_21.LineItemType;
import oasis.names.specification.ubl.schema.xsd.commonaggregatecomponents_21.MonetaryTotalType;
import oasis.names.specification.ubl.schema.xsd.commonaggregatecomponents_21.OrderLineType;
import oasis.names.specification.ubl.schema.xsd.commonaggregatecomponents_21.PartyIdentificationType;
import oasis.names.specification.ubl.schema.xsd.commonaggregatecomponents_21.PartyNameType;
import oasis.names.specification.ubl.schema.xsd.commonaggregatecomponents_21.PartyType;
import oasis.names.specification.ubl.schema.xsd.commonaggregatecomponents_21.PeriodType;
import oasis.names.specification.ubl.schema.xsd.commonaggregatecomponents_21.PriceType;
import oasis.names.specification.ubl.schema.xsd.commonaggregatecomponents_21.SupplierPartyType;
import oasis.names.specification.ubl.schema.xsd.commonbasiccomponents_21.DescriptionType;
import oasis.names.specification.ubl.schema.xsd.order_21.OrderType;

import org.fusewright.core.order.PurchaseOrder;
import org.fusewright.core.order.PurchaseOrder.OrderLine;
import org.joda.money.BigMoneyProvider;

import java.math.BigDecimal;
import java.util.Objects;

/**
 * An order as XML: Order of the Universal Business Language 2.1 (OASIS, ISO/IEC 19845). Quantities
 * carry units of UN/ECE Recommendation 20. There is no tax in it: the supplier states that.
 */
public final class UblOrder {
    private static final String ONE = "C62";
    private static final String METRE = "MTR";

    private UblOrder() {}

    /**
     * Prints in UTF-8, checked against the schema on the way.
     *
     * @throws java.util.NoSuchElementException for a draft, which has no date yet
     */
    public static byte[] print(PurchaseOrder order) {
        OrderType document = document(order);
        return Objects.requireNonNull(
                UBL21Marshaller.order().setFormattedOutput(true).getAsBytes(document),
                "an order that is no valid UBL");
    }

    private static OrderType document(PurchaseOrder order) {
        OrderType document = new OrderType();
        document.setUBLVersionID("2.1");
        document.setID(order.number());
        document.setIssueDate(order.orderedOn().orElseThrow());
        String currency = order.currency().getCode();
        document.setDocumentCurrencyCode(currency);
        CustomerPartyType buyer = new CustomerPartyType();
        buyer.setParty(party(order.buyer()));
        document.setBuyerCustomerParty(buyer);
        SupplierPartyType seller = new SupplierPartyType();
        PartyType sellerParty = party(order.supplierName());
        PartyIdentificationType code = new PartyIdentificationType();
        code.setID(order.supplierCode());
        sellerParty.addPartyIdentification(code);
        seller.setParty(sellerParty);
        document.setSellerSupplierParty(seller);
        order.wantedBy()
                .ifPresent(
                        day -> {
                            PeriodType period = new PeriodType();
                            period.setEndDate(day);
                            DeliveryType delivery = new DeliveryType();
                            delivery.setRequestedDeliveryPeriod(period);
                            document.addDelivery(delivery);
                        });
        MonetaryTotalType total = new MonetaryTotalType();
        total.setLineExtensionAmount(amount(order.total())).setCurrencyID(currency);
        total.setPayableAmount(amount(order.total())).setCurrencyID(currency);
        document.setAnticipatedMonetaryTotal(total);
        for (OrderLine line : order.lines()) {
            document.addOrderLine(line(line, currency));
        }
        return document;
    }

    private static PartyType party(String name) {
        PartyNameType named = new PartyNameType();
        named.setName(name);
        PartyType party = new PartyType();
        party.addPartyName(named);
        return party;
    }

    private static OrderLineType line(OrderLine line, String currency) {
        String unit = line.unit().equals("m") ? METRE : ONE;
        LineItemType item = new LineItemType();
        item.setID(Integer.toString(line.line()));
        item.setQuantity(BigDecimal.valueOf(line.quantity())).setUnitCode(unit);
        item.setLineExtensionAmount(amount(line.price())).setCurrencyID(currency);
        item.setPartialDeliveryIndicator(true);
        PriceType price = new PriceType();
        price.setPriceAmount(amount(line.unitPrice())).setCurrencyID(currency);
        price.setBaseQuantity(BigDecimal.ONE).setUnitCode(unit);
        item.setPrice(price);
        ItemType thing = new ItemType();
        thing.addDescription(new DescriptionType(line.title()));
        thing.setName(line.part().value());
        ItemIdentificationType number = new ItemIdentificationType();
        number.setID(line.part().value());
        thing.setSellersItemIdentification(number);
        item.setItem(thing);
        OrderLineType ordered = new OrderLineType();
        ordered.setLineItem(item);
        return ordered;
    }

    private static BigDecimal amount(BigMoneyProvider money) {
        return money.toBigMoney().getAmount();
    }
}
