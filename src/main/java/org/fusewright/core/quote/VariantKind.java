package org.fusewright.core.quote;

import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.job.Job;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** The ways in which one job can be quoted; they differ in the kinds of device on its circuits. */
public enum VariantKind {
    AS_ASKED("as-asked", "As asked for", "The kinds of device that the job asks for"),
    FUSES("fuses", "All fuses", "A blade fuse on every circuit"),
    SOLID_STATE(
            "solid-state",
            "Solid-state",
            "A solid-state breaker on every circuit that one fits, else a fuse"),
    CHEAPEST(
            "cheapest",
            "Cheapest that passes",
            "The lowest price found among designs without a failing check and with the fewest"
                    + " cautions");

    private final String code;
    private final String title;
    private final String meaning;

    VariantKind(String code, String title, String meaning) {
        this.code = code;
        this.title = title;
        this.meaning = meaning;
    }

    public String code() {
        return code;
    }

    public String title() {
        return title;
    }

    /** What it stands for, in one sentence without a full stop. */
    public String meaning() {
        return meaning;
    }

    public static Optional<VariantKind> parse(String code) {
        return Stream.of(values()).filter(kind -> kind.code.equals(code)).findFirst();
    }

    /** The job with these kinds of device on all circuits, in the order of preference. */
    static Job withDevices(Job job, DeviceKind... kinds) {
        List<DeviceKind> wanted = List.of(kinds);
        return job.withCircuits(
                job.circuits().stream().map(circuit -> circuit.withDevices(wanted)).toList());
    }
}
