package org.fusewright.core.pricing;

import org.fusewright.core.catalog.BaggedSet;
import org.fusewright.core.catalog.BladeForm;
import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.catalog.Device;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.catalog.Holder;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.catalog.Seal;
import org.fusewright.core.catalog.Terminal;
import org.fusewright.core.catalog.Wire;
import org.fusewright.core.quantity.WireColour;
import org.fusewright.core.quantity.WireSize;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * The parts of a catalog that can be bought in one currency, arranged as the planning needs them.
 * Built once for a catalog and a currency, then shared; unchanging.
 */
public final class Stock {

    private final Catalog catalog;
    private final PriceList prices;
    private final Bags bags;
    private final Map<DeviceKind, List<Device>> blockDevices = new EnumMap<>(DeviceKind.class);
    private final Map<PartNumber, Holder> holders = new HashMap<>();
    private final List<Device> mainDevices;
    private final Map<String, Map<WireColour, List<Wire>>> wires;
    private final List<String> wireFamilies;
    private final Map<String, List<WireSize>> wireSizes;
    private final Map<Class<? extends Part>, List<Part>> byKind;
    private final Map<Class<? extends Part>, List<Part>> byPrice = new HashMap<>();

    private Stock(Catalog catalog, CurrencyUnit currency) {
        this.catalog = catalog;
        this.prices = PriceList.of(catalog, currency);
        this.byKind =
                catalog.listParts().stream()
                        .filter(part -> prices.isStocked(part.number()))
                        .collect(
                                Collectors.groupingBy(
                                        Part::getClass, Collectors.toUnmodifiableList()));
        Comparator<Part> cheapestFirst =
                Comparator.comparingLong(part -> prices.unitPriceMicros(part.number()));
        this.bags = Bags.of(list(BaggedSet.class), prices);
        byKind.forEach(
                (kind, parts) -> byPrice.put(kind, parts.stream().sorted(cheapestFirst).toList()));
        Comparator<Device> byRating =
                Comparator.comparingDouble(Device::ratingA).thenComparing(Device::number);
        List<Device> devices = list(Device.class).stream().sorted(byRating).toList();
        for (DeviceKind kind : DeviceKind.values()) {
            blockDevices.put(
                    kind,
                    devices.stream()
                            .filter(d -> d.kind() == kind && d.form() == BladeForm.MINI)
                            .toList());
        }
        for (Device device : devices) {
            findCheapest(Holder.class, holder -> holds(holder, device))
                    .ifPresent(holder -> holders.put(device.number(), holder));
        }
        this.mainDevices =
                devices.stream()
                        .filter(d -> d.form() != BladeForm.MINI)
                        .filter(d -> holders.containsKey(d.number()))
                        .toList();
        Comparator<Wire> bySize = Comparator.comparing(Wire::size).thenComparing(Wire::number);
        this.wires =
                list(Wire.class).stream()
                        .sorted(bySize)
                        .collect(
                                Collectors.groupingBy(
                                        Wire::family,
                                        Collectors.groupingBy(
                                                Wire::colour, Collectors.toUnmodifiableList())));
        this.wireSizes =
                wires.entrySet().stream()
                        .collect(
                                Collectors.toUnmodifiableMap(
                                        Map.Entry::getKey, family -> sizes(family.getValue())));
        // Metric sizes first, then by name: the first is what a job gets that names none.
        this.wireFamilies =
                wires.keySet().stream()
                        .sorted(
                                Comparator.comparing(
                                                (String family) ->
                                                        listWireSizes(family).getFirst().standard())
                                        .thenComparing(Comparator.naturalOrder()))
                        .toList();
    }

    private static List<WireSize> sizes(Map<WireColour, List<Wire>> family) {
        return family.values().stream()
                .flatMap(List::stream)
                .map(Wire::size)
                .distinct()
                .sorted()
                .toList();
    }

    public static Stock of(Catalog catalog, CurrencyUnit currency) {
        return new Stock(catalog, currency);
    }

    public Catalog catalog() {
        return catalog;
    }

    public PriceList prices() {
        return prices;
    }

    public Bags bags() {
        return bags;
    }

    /** Stocked parts of one kind, by number. */
    public <T extends Part> List<T> list(Class<T> kind) {
        @SuppressWarnings("unchecked")
        List<T> parts = (List<T>) (List<?>) byKind.getOrDefault(kind, List.of());
        return parts;
    }

    /** Stocked parts of one kind, cheapest first; equal prices by number. */
    public <T extends Part> List<T> listByPrice(Class<T> kind) {
        @SuppressWarnings("unchecked")
        List<T> parts = (List<T>) (List<?>) byPrice.getOrDefault(kind, List.of());
        return parts;
    }

    /** Devices that sit in a block, by rising rating. */
    public List<Device> listBlockDevices(DeviceKind kind) {
        return blockDevices.getOrDefault(kind, List.of());
    }

    /** Devices for a holder near the source, by rising rating; each has a holder in stock. */
    public List<Device> listMainDevices() {
        return mainDevices;
    }

    /** The cheapest holder that takes the device. */
    public Optional<Holder> findHolder(Device main) {
        return Optional.ofNullable(holders.get(main.number()));
    }

    /** The cheapest terminal of a family whose crimp takes the wire's copper. */
    public Optional<Terminal> findTerminal(String family, Wire wire) {
        for (Terminal terminal : listByPrice(Terminal.class)) {
            if (terminal.family().equals(family) && terminal.accepts(wire.copperMm2())) {
                return Optional.of(terminal);
            }
        }
        return Optional.empty();
    }

    /**
     * The seal of a family that closes on the wire's outside diameter. That diameter is the largest
     * the wire may have, so of several seals the one that also closes on the thinnest is right.
     */
    public Optional<Seal> findSeal(String family, Wire wire) {
        @Nullable Seal best = null;
        for (Seal seal : listByPrice(Seal.class)) {
            if (seal.family().equals(family)
                    && seal.accepts(wire.outsideMm())
                    && (best == null || seal.minOutsideMm() < best.minOutsideMm())) {
                best = seal;
            }
        }
        return Optional.ofNullable(best);
    }

    /** The cheapest stocked part that suits; among equals the first by number. */
    public <T extends Part> Optional<T> findCheapest(Class<T> kind, Predicate<T> suits) {
        for (T part : listByPrice(kind)) {
            if (suits.test(part)) {
                return Optional.of(part);
            }
        }
        return Optional.empty();
    }

    private static boolean holds(Holder holder, Device device) {
        return holder.form() == device.form() && holder.maxCurrentA() >= device.ratingA();
    }

    /** Names of the wire families: metric sizes first, then by name. */
    public List<String> listWireFamilies() {
        return wireFamilies;
    }

    /** The family that a job gets when it names none. */
    public Optional<String> findUsualWireFamily() {
        return wireFamilies.stream().findFirst();
    }

    /** Wires of one family and colour, thin to thick; empty when none is stocked. */
    public List<Wire> listWires(String family, WireColour colour) {
        return wires.getOrDefault(family, Map.of()).getOrDefault(colour, List.of());
    }

    /** The sizes that a family is stocked in, in any colour, thin to thick. */
    public List<WireSize> listWireSizes(String family) {
        return wireSizes.getOrDefault(family, List.of());
    }
}
