package org.fusewright.core.sizing;

import org.fusewright.core.catalog.Device;
import org.fusewright.core.words.Amount;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;

/** Devices by rating and kind, as sentences name them. */
final class DeviceWords {

    private DeviceWords() {}

    /** "10 A fuse", "10 A auto-reset". */
    static Phrase rated(Device device) {
        return Phrase.of(
                switch (device.kind()) {
                    case FUSE -> "rated.fuse";
                    case MANUAL_RESET -> "rated.manual-reset";
                    case AUTO_RESET -> "rated.auto-reset";
                },
                Amount.rating(device.ratingA()));
    }

    /** "10 A fuse", "10 A auto-reset breaker". */
    static Phrase inFull(Device device) {
        return Phrase.of(
                switch (device.kind()) {
                    case FUSE -> "rated.fuse";
                    case MANUAL_RESET -> "rated-in-full.manual-reset";
                    case AUTO_RESET -> "rated-in-full.auto-reset";
                },
                Amount.rating(device.ratingA()));
    }

    /** "fuse 10 A", "auto-reset 10 A": the kind comes first where kinds are told apart. */
    static Phrase byKind(Device device) {
        return Phrase.of(
                switch (device.kind()) {
                    case FUSE -> "of-kind.fuse";
                    case MANUAL_RESET -> "of-kind.manual-reset";
                    case AUTO_RESET -> "of-kind.auto-reset";
                },
                Amount.rating(device.ratingA()));
    }

    /** Why none of a kind does, with what its best one misses. */
    static Phrase none(Device best, Text missed) {
        return Phrase.of(
                switch (best.kind()) {
                    case FUSE -> "choice.no-fuse";
                    case MANUAL_RESET -> "choice.no-manual-reset";
                    case AUTO_RESET -> "choice.no-auto-reset";
                },
                byKind(best),
                missed);
    }
}
