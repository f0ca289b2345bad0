package org.fusewright.core.job;

/**
 * Something that draws current, {@code count} times over.
 *
 * @param ratedA current of one at {@code ratedV}
 * @param branchM from the splice to the load; on a circuit with one load it adds to the run
 */
public record Load(
        String title,
        LoadKind kind,
        double ratedA,
        double ratedV,
        int count,
        Inrush inrush,
        Duty duty,
        double branchM) {

    public Load {
        if (!(ratedA > 0) || !(ratedV > 0) || count < 1 || !(branchM >= 0)) {
            throw new IllegalArgumentException("load " + title + " is out of range");
        }
    }
}
