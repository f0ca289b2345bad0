package org.fusewright.catalogs.store;

import org.fusewright.core.catalog.Offer.PriceBreak;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;

import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.json.JsonFactory;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Price breaks as one JSON object: the price of a piece by the quantity from which it is valid. */
final class PriceBreaks {

    private static final JsonFactory JSON = new JsonFactory();

    private PriceBreaks() {}

    static String write(List<PriceBreak> breaks) {
        StringBuilder json = new StringBuilder("{");
        for (PriceBreak priceBreak : breaks) {
            json.append(json.length() == 1 ? "\"" : ",\"")
                    .append(priceBreak.fromQuantity())
                    .append("\":")
                    .append(priceBreak.unitPrice().getAmount().toPlainString());
        }
        return json.append('}').toString();
    }

    /** By rising quantity. */
    static List<PriceBreak> read(CurrencyUnit currency, String json) {
        List<PriceBreak> breaks = new ArrayList<>();
        try (JsonParser parser = JSON.createParser(ObjectReadContext.empty(), json)) {
            parser.nextToken();
            while (parser.nextToken() == JsonToken.PROPERTY_NAME) {
                int from = Integer.parseInt(parser.currentName());
                parser.nextToken();
                breaks.add(new PriceBreak(from, BigMoney.of(currency, parser.getDecimalValue())));
            }
        }
        breaks.sort(Comparator.comparingInt(PriceBreak::fromQuantity));
        return breaks;
    }
}
