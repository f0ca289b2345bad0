package org.fusewright.core.fitting;

final class Regrouping {
    private Regrouping() {}

    static void improve(Filling filling) {}
}
