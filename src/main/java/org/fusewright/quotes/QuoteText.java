package org.fusewright.quotes;

import org.fusewright.core.quote.LineKind;
import org.fusewright.core.quote.Quote;
import org.fusewright.core.quote.VariantKind;
import org.fusewright.core.words.Text;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;
import org.joda.money.Money;

import tools.jackson.core.JsonGenerator;
import tools.jackson.core.JsonParser;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.databind.DeserializationContext;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.SerializationContext;
import tools.jackson.databind.ValueDeserializer;
import tools.jackson.databind.ValueSerializer;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.module.SimpleModule;

import java.math.BigDecimal;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Quotes as JSON text, and back. Amounts are plain numbers with the decimals that they have; they
 * are all in the quote's one currency, which stands in it once.
 */
public final class QuoteText {
    /** The version of the form that quotes are written in. */
    static final int SCHEMA_VERSION = 1;

    private static final String CURRENCY = "currency";
    private static final JsonMapper PLAIN =
            JsonMapper.builder()
                    .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
                    .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
                    .build();
    private static final JsonMapper MAPPER =
            JsonMapper.builder()
                    .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
                    .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
                    .enable(DeserializationFeature.FAIL_ON_NULL_CREATOR_PROPERTIES)
                    .addModule(amountsAndCodes())
                    .build();

    private QuoteText() {}

    /** Writes a quote, or a part of one. */
    public static String print(Object quote) {
        return MAPPER.writeValueAsString(quote);
    }

    static Quote parse(String text) {
        CurrencyUnit currency = CurrencyUnit.of(PLAIN.readTree(text).get(CURRENCY).stringValue());
        return MAPPER.readerFor(Quote.class).withAttribute(CURRENCY, currency).readValue(text);
    }

    static String printWishes(JsonNode wishes) {
        return PLAIN.writeValueAsString(wishes);
    }

    static JsonNode parseWishes(String text) {
        return PLAIN.readTree(text);
    }

    private static SimpleModule amountsAndCodes() {
        SimpleModule module = new SimpleModule();
        addText(module, CurrencyUnit.class, CurrencyUnit::getCode, CurrencyUnit::of);
        addText(
                module,
                VariantKind.class,
                VariantKind::code,
                code -> VariantKind.parse(code).orElseThrow());
        addText(module, LineKind.class, LineKind::code, QuoteText::lineKind);
        addText(module, Text.class, Text::english, Text::verbatim);
        addNumber(module, Money.class, Money::getAmount, Money::of);
        addNumber(module, BigMoney.class, BigMoney::getAmount, BigMoney::of);
        return module;
    }

    private static LineKind lineKind(String code) {
        Optional<LineKind> kind =
                Stream.of(LineKind.values()).filter(one -> one.code().equals(code)).findFirst();
        return kind.orElseThrow();
    }

    private static <T> void addText(
            SimpleModule module,
            Class<T> type,
            Function<T, String> print,
            Function<String, T> parse) {
        module.addSerializer(
                type,
                new ValueSerializer<T>() {
                    @Override
                    public void serialize(T value, JsonGenerator out, SerializationContext all) {
                        out.writeString(print.apply(value));
                    }
                });
        module.addDeserializer(
                type,
                new ValueDeserializer<T>() {
                    @Override
                    public T deserialize(JsonParser in, DeserializationContext all) {
                        return parse.apply(in.getString());
                    }
                });
    }

    private interface InCurrency<T> {
        T of(CurrencyUnit currency, BigDecimal amount);
    }

    private static <T> void addNumber(
            SimpleModule module,
            Class<T> type,
            Function<T, BigDecimal> amount,
            InCurrency<T> make) {
        module.addSerializer(
                type,
                new ValueSerializer<T>() {
                    @Override
                    public void serialize(T value, JsonGenerator out, SerializationContext all) {
                        out.writeNumber(amount.apply(value));
                    }
                });
        module.addDeserializer(
                type,
                new ValueDeserializer<T>() {
                    @Override
                    public T deserialize(JsonParser in, DeserializationContext all) {
                        CurrencyUnit currency =
                                (CurrencyUnit) Objects.requireNonNull(all.getAttribute(CURRENCY));
                        return make.of(currency, in.getDecimalValue());
                    }
                });
    }
}
