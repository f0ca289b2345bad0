package org.fusewright.core.words;

import java.math.BigDecimal;

/**
 * An amount of money to be said, with all its decimals: "12.50 EUR".
 *
 * @param currency code of ISO 4217
 */
public record Price(BigDecimal amount, String currency) implements Text {}
