package org.fusewright.core.quote;

import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.job.Job;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** The ways in which one job can be quoted; they differ in the kinds of device on its circuits. */
public enum VariantKind {
    AS_ASKED("as-asked"),
    FUSES("fuses"),
    SOLID_STATE("solid-state"),
    CHEAPEST("cheapest");

    private final String code;
    private final Text title;
    private final Text meaning;

    VariantKind(String code) {
        this.code = code;
        this.title = Phrase.of("variant." + code);
        this.meaning = Phrase.of("variant.meaning." + code);
    }

    public String code() {
        return code;
    }

    public Text title() {
        return title;
    }

    /** What it stands for, in one sentence without a full stop. */
    public Text meaning() {
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
