package org.fusewright.catalogs.store;

import org.fusewright.catalogs.PartKind;
import org.fusewright.core.catalog.Item;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.quantity.WireColour;
import org.fusewright.core.quantity.WireSize;

import tools.jackson.core.JsonParser;
import tools.jackson.databind.DeserializationContext;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.deser.std.StdDeserializer;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.module.SimpleModule;
import tools.jackson.databind.node.ObjectNode;
import tools.jackson.databind.ser.std.ToStringSerializer;

import java.lang.reflect.RecordComponent;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * What only one kind of part has, as JSON: the components of its record but the item. Reading is
 * strict: a component that is missing or unknown is an error, and no figure is guessed. Only what a
 * part need not have may be missing: parts were kept before it could be said of them.
 */
final class PartAttributes {

    private static final String ITEM = "item";

    private static final JsonMapper MAPPER =
            JsonMapper.builder()
                    .addModule(
                            new SimpleModule()
                                    .addSerializer(PartNumber.class, ToStringSerializer.instance)
                                    .addSerializer(WireSize.class, ToStringSerializer.instance)
                                    .addSerializer(WireColour.class, ToStringSerializer.instance)
                                    .addDeserializer(
                                            PartNumber.class,
                                            fromText(PartNumber.class, PartNumber::new))
                                    .addDeserializer(
                                            WireSize.class,
                                            fromText(
                                                    WireSize.class,
                                                    text -> WireSize.parse(text).orElseThrow()))
                                    .addDeserializer(
                                            WireColour.class,
                                            fromText(WireColour.class, WireColour::new)))
                    .enable(
                            DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES,
                            DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES,
                            DeserializationFeature.FAIL_ON_NULL_CREATOR_PROPERTIES,
                            DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES,
                            DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
                    .build();

    private PartAttributes() {}

    static String write(Part part) {
        ObjectNode attributes = MAPPER.valueToTree(part);
        attributes.remove(ITEM);
        return MAPPER.writeValueAsString(attributes);
    }

    static Part read(PartKind kind, Item item, String json) {
        ObjectNode attributes = (ObjectNode) MAPPER.readTree(json);
        attributes.set(ITEM, MAPPER.valueToTree(item));
        for (RecordComponent component : kind.type().getRecordComponents()) {
            if (component.getType() == OptionalDouble.class
                    && !attributes.has(component.getName())) {
                attributes.putNull(component.getName());
            }
        }
        return MAPPER.treeToValue(attributes, kind.type());
    }

    private static <T> StdDeserializer<T> fromText(Class<T> type, Function<String, T> parse) {
        return new StdDeserializer<>(type) {
            @Override
            public T deserialize(JsonParser parser, DeserializationContext context) {
                return parse.apply(parser.getString());
            }
        };
    }
}
