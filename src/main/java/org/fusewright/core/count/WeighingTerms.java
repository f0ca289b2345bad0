package org.fusewright.core.count;

import org.fusewright.core.words.Exact;
import org.fusewright.core.words.Unit;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * What a weighing is judged by.
 *
 * @param resolutionG one step of the scale
 * @param samplePieces how many pieces a part's mean mass was found from; a common error of that
 *     mean counts for all its pieces
 * @param errorProbability the highest acceptable probability of a wrong answer, either way
 * @param scatter relative standard deviation of a piece's mass, by kind; the usual one elsewhere
 */
public record WeighingTerms(
        double resolutionG,
        int samplePieces,
        double errorProbability,
        Map<CountedKind, Double> scatter) {

    /** Common practice, no published source. */
    public static final int USUAL_SAMPLE = 10;

    /** One wrong answer in a hundred; the shop's choice. */
    public static final double USUAL_ERROR = 0.01;

    public WeighingTerms {
        if (!(resolutionG > 0) || !Double.isFinite(resolutionG)) {
            throw new IllegalArgumentException("resolutionG must be greater than 0");
        }
        if (samplePieces < 1) {
            throw new IllegalArgumentException("samplePieces must be 1 or more");
        }
        if (!(errorProbability > 0 && errorProbability < 0.5)) {
            throw new IllegalArgumentException("errorProbability must lie between 0 and 0.5");
        }
        if (scatter.values().stream().anyMatch(share -> !(share >= 0 && share <= 1))) {
            throw new IllegalArgumentException("a scatter must be 0 to 1");
        }
        Map<CountedKind, Double> all = new EnumMap<>(CountedKind.class);
        for (CountedKind kind : CountedKind.values()) {
            all.put(kind, scatter.getOrDefault(kind, kind.usualScatter()));
        }
        scatter = Map.copyOf(all);
    }

    public static WeighingTerms usual(double resolutionG) {
        return new WeighingTerms(resolutionG, USUAL_SAMPLE, USUAL_ERROR, Map.of());
    }

    /** A mass in whole steps, with the decimals of a step. */
    Exact shown(double massG) {
        BigDecimal step = BigDecimal.valueOf(resolutionG).stripTrailingZeros();
        BigDecimal steps = BigDecimal.valueOf(Math.rint(massG / resolutionG));
        return new Exact(
                steps.multiply(step).setScale(Math.max(0, step.scale()), RoundingMode.HALF_UP),
                Unit.GRAM);
    }

    double varianceG2(ExpectedLine line) {
        return varianceG2(line, line.masses());
    }

    /** What one of its lightest pieces more adds to the variance of a line. */
    double extraVarianceG2(ExpectedLine line) {
        return varianceG2(line, line.masses().withPiece(line.masses().lightestG()))
                - varianceG2(line);
    }

    private double varianceG2(ExpectedLine line, Masses masses) {
        return masses.varianceG2(scatter.get(line.kind()), samplePieces);
    }

    /** What these lines weigh together; parts scatter independently of each other. */
    public NetMass massOf(List<ExpectedLine> lines) {
        double meanG = lines.stream().mapToDouble(line -> line.masses().totalG()).sum();
        double varianceG2 = lines.stream().mapToDouble(this::varianceG2).sum();
        return new NetMass(meanG, Math.sqrt(varianceG2), resolutionG);
    }

    /** The same with a piece more on one line, or one fewer when its mass is negative. */
    NetMass massOf(List<ExpectedLine> lines, ExpectedLine changed, double pieceG) {
        NetMass mass = massOf(lines);
        double varianceG2 =
                mass.scatterG() * mass.scatterG()
                        - varianceG2(changed)
                        + varianceG2(changed, changed.masses().withPiece(pieceG));
        return new NetMass(
                Math.max(0, mass.meanG() + pieceG),
                Math.sqrt(Math.max(0, varianceG2)),
                resolutionG);
    }
}
