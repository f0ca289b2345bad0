package org.fusewright.core.order;

import org.fusewright.core.catalog.PartNumber;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;
import org.joda.money.Money;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDate;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;

/**
 * What a supplier is asked to send.
 *
 * @param orderedOn empty for a draft
 * @param buyer the shop's name
 */
public record PurchaseOrder(
        String number,
        Optional<LocalDate> orderedOn,
        Optional<LocalDate> wantedBy,
        String buyer,
        String supplierCode,
        String supplierName,
        CurrencyUnit currency,
        List<OrderLine> lines) {

    /**
     * So much of one part.
     *
     * @param line its number in the order, from 1
     * @param unit "each", or "m" for wire
     * @param quantity a whole number of packs
     * @param price quantity times unit price, rounded half up
     */
    public record OrderLine(
            int line,
            PartNumber part,
            String title,
            String unit,
            int packSize,
            int quantity,
            BigMoney unitPrice,
            Money price) {}

    public PurchaseOrder {
        lines = List.copyOf(lines);
        if (lines.isEmpty()) {
            throw new IllegalArgumentException("an order needs a line: " + number);
        }
    }

    /** The sum of the lines. */
    public Money total() {
        return lines.stream().map(OrderLine::price).reduce(Money.zero(currency), Money::plus);
    }

    /** Tells two orders apart: the SHA-256 of all that stands in it, in hex. */
    public String fingerprint() {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            return HexFormat.of()
                    .formatHex(digest.digest(toString().getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
