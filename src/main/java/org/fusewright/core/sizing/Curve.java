package org.fusewright.core.sizing;

import org.fusewright.core.sizing.TimeCurrentChart.Point;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * A falling curve of time over current as points with straight pieces between them, both in
 * logarithms. A jump becomes an upright piece.
 */
final class Curve {

    /** Stands for a time without end. */
    static final double NEVER_S = 1e12;

    private static final double AT_ONCE_S = 1e-12;

    /** Close to a bend, so that a jump shows the value on each side of it. */
    private static final double BESIDE = 1e-9;

    /**
     * A piece counts as straight when its middle lies nearer to it than this, in natural logarithms
     * of time and current alike: 1/1500 of a decade, far finer than a printed line is wide.
     */
    private static final double STRAIGHT = 1.5e-3;

    private static final int LEAST_HALVINGS = 3;
    private static final int MOST_HALVINGS = 14;

    private final DoubleUnaryOperator secondsAt;
    private final List<Point> points = new ArrayList<>();
    private int pieceStart;

    private Curve(DoubleUnaryOperator secondsAt) {
        this.secondsAt = secondsAt;
    }

    /**
     * @param bendsA where the curve turns or jumps; what is between them is found by halving
     */
    static List<Point> trace(DoubleUnaryOperator secondsAt, LogAxis currentA, double[] bendsA) {
        Curve curve = new Curve(secondsAt);
        double fromA = currentA.least();
        double[] sortedA = bendsA.clone();
        Arrays.sort(sortedA);
        for (double bendA : sortedA) {
            if (bendA > fromA && bendA < currentA.most()) {
                curve.addPiece(fromA, bendA);
                fromA = bendA;
            }
        }
        curve.addPiece(fromA, currentA.most());
        return curve.points;
    }

    private void addPiece(double fromA, double toA) {
        Point from = new Point(fromA, secondsAt(fromA * (1 + BESIDE)));
        Point to = new Point(toA, secondsAt(toA * (1 - BESIDE)));
        if (points.isEmpty() || isJump(points.getLast(), from)) {
            points.add(from);
        }
        pieceStart = points.size() - 1;
        halve(from, to, 1);
        add(to);
    }

    private static boolean isJump(Point left, Point right) {
        return Math.abs(Math.log(right.seconds() / left.seconds())) >= STRAIGHT;
    }

    private void halve(Point from, Point to, int halvings) {
        Point middle = at(Math.sqrt(from.currentA() * to.currentA()));
        boolean straight = halvings > LEAST_HALVINGS && isStraight(from, middle, to);
        if (straight || halvings > MOST_HALVINGS) {
            return;
        }
        halve(from, middle, halvings + 1);
        add(middle);
        halve(middle, to, halvings + 1);
    }

    private Point at(double currentA) {
        return new Point(currentA, secondsAt(currentA));
    }

    private double secondsAt(double currentA) {
        return Math.clamp(secondsAt.applyAsDouble(currentA), AT_ONCE_S, NEVER_S);
    }

    /** Adds a point, in place of the one before it when that lies on the way and is no bend. */
    private void add(Point point) {
        int count = points.size();
        if (count - 1 > pieceStart && isStraight(points.get(count - 2), points.getLast(), point)) {
            points.removeLast();
        }
        points.add(point);
    }

    private static boolean isStraight(Point from, Point middle, Point to) {
        if (from.currentA() == to.currentA() || from.seconds() == to.seconds()) {
            return middle.seconds() == to.seconds() && from.seconds() == to.seconds();
        }
        double across = Math.log(to.currentA() / from.currentA());
        double down = Math.log(to.seconds() / from.seconds());
        double besideUpright =
                Math.log(middle.currentA() / from.currentA()) * down
                        - Math.log(middle.seconds() / from.seconds()) * across;
        return Math.abs(besideUpright) < STRAIGHT * Math.hypot(across, down);
    }

    /** The part of a falling curve that lies on an axis of times. */
    static List<Point> clip(List<Point> points, LogAxis timeS) {
        List<Point> inside = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            Point point = points.get(i);
            if (i > 0) {
                addCrossing(inside, points.get(i - 1), point, timeS.most());
                addCrossing(inside, points.get(i - 1), point, timeS.least());
            }
            if (point.seconds() <= timeS.most() && point.seconds() >= timeS.least()) {
                inside.add(point);
            }
        }
        return inside;
    }

    private static void addCrossing(List<Point> inside, Point above, Point below, double seconds) {
        if (above.seconds() > seconds && below.seconds() < seconds) {
            double share =
                    Math.log(seconds / above.seconds())
                            / Math.log(below.seconds() / above.seconds());
            inside.add(
                    new Point(
                            above.currentA() * Math.pow(below.currentA() / above.currentA(), share),
                            seconds));
        }
    }
}
