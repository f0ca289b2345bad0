package org.fusewright.catalogs;

import org.joda.money.Money;

import java.util.Optional;

/**
 * Who sells parts to the shop; offers name it by its code.
 *
 * @param minimumOrder the least that one order there must be worth
 */
public record Supplier(String code, String title, Optional<Money> minimumOrder) {}
