package org.fusewright.core.count;

import java.util.List;

/**
 * The mean masses of some pieces of one part, which need not be alike: leads differ in length.
 *
 * @param totalG of all pieces together
 * @param lightestG of the lightest piece
 * @param squareSumG2 the sum of the squared masses of the pieces
 */
public record Masses(double totalG, double lightestG, double squareSumG2) {

    public static final Masses NONE = new Masses(0, 0, 0);

    public Masses {
        if (!(totalG >= 0 && lightestG >= 0 && squareSumG2 >= 0)
                || !Double.isFinite(totalG + lightestG + squareSumG2)) {
            throw new IllegalArgumentException("masses must be finite and not negative");
        }
    }

    /** So many pieces of one mass. */
    public static Masses alike(int pieces, double eachG) {
        return pieces == 0 ? NONE : new Masses(pieces * eachG, eachG, pieces * eachG * eachG);
    }

    public static Masses of(List<Double> eachG) {
        return new Masses(
                eachG.stream().mapToDouble(Double::doubleValue).sum(),
                eachG.stream().mapToDouble(Double::doubleValue).min().orElse(0),
                eachG.stream().mapToDouble(massG -> massG * massG).sum());
    }

    /** With one piece more, or one fewer when its mass is negative. */
    Masses withPiece(double pieceG) {
        return new Masses(
                Math.max(0, totalG + pieceG),
                lightestG,
                Math.max(0, squareSumG2 + Math.signum(pieceG) * pieceG * pieceG));
    }

    /** A share of the pieces, taken as of the mean mass. */
    Masses share(double share) {
        return share == 0 ? NONE : new Masses(totalG * share, lightestG, squareSumG2 * share);
    }

    /**
     * Variance of the total, when each piece scatters by this share about its part's mean, and that
     * mean was found from so many pieces: for N alike pieces of mass m it is (m c)^2 N (1 + N/n).
     * First-order theory of counting by weight: Steiner and MacKay, "Scale Counting", University of
     * Waterloo (abstract read, equations from memory).
     */
    double varianceG2(double scatter, int samplePieces) {
        return scatter * scatter * (squareSumG2 + totalG * totalG / samplePieces);
    }
}
