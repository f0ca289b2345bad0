package org.fusewright.core.catalog;

import org.fusewright.core.quantity.Celsius;

import java.util.List;

/**
 * How a device's rating moves with the temperature around it: points of temperature and share of
 * the rating, straight lines between, the outermost values beyond. No points: indifferent.
 */
public record Rerating(List<Point> points) {

    /** At {@code celsius} the device carries {@code factor} times its rating. */
    public record Point(double celsius, double factor) {

        public Point {
            Require.positive("re-rating factor", factor);
        }
    }

    public static final Rerating NONE = new Rerating(List.of());

    public Rerating {
        points = List.copyOf(points);
        for (int i = 1; i < points.size(); i++) {
            if (points.get(i).celsius() <= points.get(i - 1).celsius()) {
                throw Require.refused("refused.rerating-rise");
            }
        }
    }

    public double factorAt(Celsius surrounding) {
        if (points.isEmpty()) {
            return 1;
        }
        Point below = points.getFirst();
        for (Point above : points) {
            if (surrounding.value() <= above.celsius()) {
                return between(below, above, surrounding.value());
            }
            below = above;
        }
        return points.getLast().factor();
    }

    private static double between(Point below, Point above, double celsius) {
        if (above.celsius() == below.celsius()) {
            return above.factor();
        }
        double share = (celsius - below.celsius()) / (above.celsius() - below.celsius());
        return below.factor() + share * (above.factor() - below.factor());
    }
}
