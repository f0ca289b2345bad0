package org.fusewright.core.kit;

import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.job.ArrangementKind;
import org.fusewright.core.job.BlockPlace;
import org.fusewright.core.job.Choices;
import org.fusewright.core.job.Circuit;
import org.fusewright.core.job.Duty;
import org.fusewright.core.job.Feed;
import org.fusewright.core.job.Inrush;
import org.fusewright.core.job.Job;
import org.fusewright.core.job.Load;
import org.fusewright.core.job.LoadKind;
import org.fusewright.core.job.Location;
import org.fusewright.core.job.RelayUse;
import org.fusewright.core.job.ReturnPath;
import org.fusewright.core.job.Supply;
import org.fusewright.core.job.Surroundings;
import org.fusewright.core.quantity.Celsius;
import org.fusewright.core.quantity.Millimetres;
import org.fusewright.core.quantity.WireColour;
import org.fusewright.core.quantity.WireSize;
import org.joda.money.CurrencyUnit;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Consumer;

/**
 * Names a design: SHA-256 over the catalog's version and the job with its defaults, in hex. Each
 * record is taken apart by a pattern, so that a component added to it does not compile until it
 * counts here too; lengths stand before texts and lists, so that no two jobs read alike.
 */
final class Fingerprint {
    private static final VarHandle EIGHT_BYTES =
            MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.BIG_ENDIAN);
    private static final int USUAL_BYTES = 8 * 1024;

    private byte[] content = new byte[USUAL_BYTES];
    private int length;

    private Fingerprint() {}

    static String of(Job job, Catalog catalog) {
        Fingerprint fingerprint = new Fingerprint();
        fingerprint.add(catalog.version());
        fingerprint.add(job);
        return fingerprint.inHex();
    }

    private String inHex() {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            digest.update(content, 0, length);
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }

    private void add(Job job) {
        switch (job) {
            case Job(
                            String reference,
                            String title,
                            String customer,
                            CurrencyUnit currency,
                            Supply supply,
                            Surroundings surroundings,
                            List<Feed> feeds,
                            List<Circuit> circuits,
                            List<Location> locations,
                            Choices choices) -> {
                add(reference);
                add(title);
                add(customer);
                add(currency.getCode());
                add(supply);
                add(surroundings);
                addAll(feeds, this::add);
                addAll(circuits, this::add);
                addAll(locations, this::add);
                add(choices);
            }
        }
    }

    private void add(Supply supply) {
        switch (supply) {
            case Supply(
                            double nominalV,
                            double engineOffV,
                            double chargingV,
                            double batteryResistanceMilliohm,
                            OptionalDouble chargingOutputA,
                            OptionalDouble idleOutputA) -> {
                add(nominalV);
                add(engineOffV);
                add(chargingV);
                add(batteryResistanceMilliohm);
                add(chargingOutputA);
                add(idleOutputA);
            }
        }
    }

    private void add(Surroundings surroundings) {
        switch (surroundings) {
            case Surroundings(
                            Celsius(double ambientC),
                            Celsius(double blockAmbientC),
                            int bundledLeads) -> {
                add(ambientC);
                add(blockAmbientC);
                add(bundledLeads);
            }
        }
    }

    private void add(Feed feed) {
        switch (feed) {
            case Feed(
                            String id,
                            String terminal,
                            double lengthM,
                            double sourceDistanceM,
                            double diversity,
                            OptionalDouble ratingA,
                            Optional<WireSize> gauge) -> {
                add(id);
                add(terminal);
                add(lengthM);
                add(sourceDistanceM);
                add(diversity);
                add(ratingA);
                addIfPresent(gauge, this::add);
            }
        }
    }

    private void add(Circuit circuit) {
        switch (circuit) {
            case Circuit(
                            String id,
                            String title,
                            String feed,
                            String location,
                            boolean essential,
                            double runM,
                            ReturnPath returnPath,
                            Optional<WireColour> colour,
                            List<DeviceKind> devices,
                            OptionalDouble ratingA,
                            Optional<WireSize> gauge,
                            double maxDropPercent,
                            Optional<RelayUse> relay,
                            Optional<BlockPlace> place,
                            List<Load> loads) -> {
                add(id);
                add(title);
                add(feed);
                add(location);
                add(essential);
                add(runM);
                add(returnPath);
                addIfPresent(colour, given -> add(given.code()));
                addAll(devices, this::add);
                add(ratingA);
                addIfPresent(gauge, this::add);
                add(maxDropPercent);
                addIfPresent(relay, this::add);
                addIfPresent(place, this::add);
                addAll(loads, this::add);
            }
        }
    }

    private void add(WireSize size) {
        switch (size) {
            case WireSize(WireSize.Standard standard, String label, double areaMm2) -> {
                add(standard);
                add(label);
                add(areaMm2);
            }
        }
    }

    private void add(RelayUse relay) {
        switch (relay) {
            case RelayUse(
                            String triggerFrom,
                            double triggerM,
                            double groundM,
                            Optional<String> contactFrom,
                            Optional<BlockPlace> place) -> {
                add(triggerFrom);
                add(triggerM);
                add(groundM);
                addIfPresent(contactFrom, this::add);
                addIfPresent(place, this::add);
            }
        }
    }

    private void add(BlockPlace place) {
        switch (place) {
            case BlockPlace(
                            String block,
                            Optional<String> part,
                            OptionalInt position,
                            boolean fixed) -> {
                add(block);
                addIfPresent(part, this::add);
                add(position.isPresent());
                add(position.orElse(0));
                add(fixed);
            }
        }
    }

    private void add(Load load) {
        switch (load) {
            case Load(
                            String title,
                            LoadKind kind,
                            double ratedA,
                            double ratedV,
                            int count,
                            Inrush(double multiple, double ms),
                            Duty duty,
                            double branchM) -> {
                add(title);
                add(kind);
                add(ratedA);
                add(ratedV);
                add(count);
                add(multiple);
                add(ms);
                add(duty);
                add(branchM);
            }
        }
    }

    private void add(Location location) {
        switch (location) {
            case Location(String name, double fromFeedM) -> {
                add(name);
                add(fromFeedM);
            }
        }
    }

    private void add(Choices choices) {
        switch (choices) {
            case Choices(
                            List<DeviceKind> devices,
                            Optional<String> wireFamily,
                            boolean lockingWedge,
                            boolean plugEmptyCavities,
                            int sparePositions,
                            int spareFusesPerRating,
                            double slackPercent,
                            Millimetres(long endAllowanceMm),
                            Millimetres(long cutStepMm),
                            Millimetres(long pigtailMm),
                            Millimetres(long jumperMm),
                            ArrangementKind arrangement) -> {
                addAll(devices, this::add);
                addIfPresent(wireFamily, this::add);
                add(lockingWedge);
                add(plugEmptyCavities);
                add(sparePositions);
                add(spareFusesPerRating);
                add(slackPercent);
                add(endAllowanceMm);
                add(cutStepMm);
                add(pigtailMm);
                add(jumperMm);
                add(arrangement);
            }
        }
    }

    private void add(String text) {
        byte[] utf8 = text.getBytes(StandardCharsets.UTF_8);
        add(utf8.length);
        makeRoom(utf8.length);
        System.arraycopy(utf8, 0, content, length, utf8.length);
        length += utf8.length;
    }

    private void add(Enum<?> value) {
        add(value.name());
    }

    private void add(double value) {
        add(Double.doubleToLongBits(value));
    }

    private void add(long value) {
        makeRoom(Long.BYTES);
        EIGHT_BYTES.set(content, length, value);
        length += Long.BYTES;
    }

    private void add(boolean value) {
        makeRoom(1);
        content[length++] = (byte) (value ? 1 : 0);
    }

    private void add(OptionalDouble value) {
        add(value.isPresent());
        add(value.orElse(0));
    }

    private <T> void addIfPresent(Optional<T> value, Consumer<T> add) {
        add(value.isPresent());
        value.ifPresent(add);
    }

    private <T> void addAll(List<T> values, Consumer<T> add) {
        add(values.size());
        values.forEach(add);
    }

    private void makeRoom(int bytes) {
        if (content.length - length < bytes) {
            content = Arrays.copyOf(content, content.length + Math.max(content.length, bytes));
        }
    }
}
