package org.fusewright.catalogs;

import org.jspecify.annotations.Nullable;

import java.util.Optional;

/**
 * In which texts of a list each run of up to three characters stands. A hash table with open
 * addressing: building it looks up some hundred runs a text.
 */
final class Runs {

    private static final int NONE = 0;

    private final int texts;
    private long[] keys = new long[1 << 12];
    private @Nullable Places[] places = new Places[1 << 12];
    private int count;

    /**
     * @param texts so many there are
     */
    Runs(int texts) {
        this.texts = texts;
    }

    /** Where the run stands, to be added to. */
    Places of(String text, int from, int length) {
        long key = key(text, from, length);
        int slot = slot(keys, key);
        Places known = places[slot];
        if (known != null) {
            return known;
        }
        Places made = new Places(texts);
        keys[slot] = key;
        places[slot] = made;
        if (++count * 2 > keys.length) {
            grow();
        }
        return made;
    }

    Optional<Places> find(String text, int from, int length) {
        return Optional.ofNullable(places[slot(keys, key(text, from, length))]);
    }

    /** Gives back what was kept to grow. */
    void trim() {
        for (Places each : places) {
            if (each != null) {
                each.trim();
            }
        }
    }

    /** No key is 0: its length is above its characters. */
    private static long key(String text, int from, int length) {
        long key = length;
        for (int i = from; i < from + length; i++) {
            key = key << Character.SIZE | text.charAt(i);
        }
        return key;
    }

    private static int slot(long[] keys, long key) {
        int slot = (int) (key * 0x9E3779B97F4A7C15L >>> 32) & keys.length - 1;
        while (keys[slot] != NONE && keys[slot] != key) {
            slot = slot + 1 & keys.length - 1;
        }
        return slot;
    }

    private void grow() {
        long[] more = new long[keys.length * 2];
        @Nullable Places[] moved = new Places[more.length];
        for (int i = 0; i < keys.length; i++) {
            if (keys[i] != NONE) {
                int slot = slot(more, keys[i]);
                more[slot] = keys[i];
                moved[slot] = places[i];
            }
        }
        keys = more;
        places = moved;
    }
}
