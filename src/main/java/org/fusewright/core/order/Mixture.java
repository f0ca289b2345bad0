package org.fusewright.core.order;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The cheapest mixture of known ways to buy everything in which the mean of what each order is
 * worth reaches its minimum, or pays what lacks: a linear program with one row for each minimum,
 * solved by the revised simplex method. Its shadow prices are the discounts that a {@link
 * Relaxation} tries next; where no further way pays at them, they are the best ones.
 */
final class Mixture {

    private static final double TINY = 1e-7;
    private static final int MOST_PIVOTS = 500;

    /** Discounts stop a little short of the whole price, so that nothing is bought for nothing. */
    static final double LEAST_WEIGHT = 1e-7;

    /** Below this weight money hardly counts. */
    static final double HARDLY_COUNTS = 0.02;

    /** A least weight at which money counts, for the price of a somewhat lower bound. */
    static final double GUIDING_WEIGHT = 0.3;

    /** A column of the program: its price and its entries, the last one being its share. */
    private record Column(double price, double[] entries) {}

    private final int rows;
    private final double leastWeight;
    private final List<Column> columns = new ArrayList<>();
    private final int[] basis;
    private final double[][] inverse;
    private final double[] amounts;

    /**
     * @param rest what the first way costs at suppliers without a minimum to reach
     * @param over what its orders are worth above their minimums; below 0 where they lack
     * @param leastWeight what is not paid of what lacks; no weight is below that
     */
    Mixture(double rest, double[] over, double leastWeight) {
        this.leastWeight = leastWeight;
        rows = over.length;
        basis = new int[rows + 1];
        inverse = new double[rows + 1][rows + 1];
        amounts = new double[rows + 1];
        for (int s = 0; s < rows; s++) {
            columns.add(new Column(1, entry(s, -1)));
            columns.add(new Column(-leastWeight, entry(s, 1)));
        }
        columns.add(wayOf(rest, over));
        for (int s = 0; s < rows; s++) {
            basis[s] = over[s] >= 0 ? 2 * s : 2 * s + 1;
            double sign = over[s] >= 0 ? -1 : 1;
            inverse[s][s] = sign;
            inverse[s][rows] = -sign * over[s];
            amounts[s] = Math.abs(over[s]);
        }
        basis[rows] = 2 * rows;
        inverse[rows][rows] = 1;
        amounts[rows] = 1;
    }

    private double[] entry(int row, double value) {
        double[] entries = new double[rows + 1];
        entries[row] = value;
        return entries;
    }

    private Column wayOf(double rest, double[] over) {
        double[] entries = Arrays.copyOf(over, rows + 1);
        entries[rows] = 1;
        return new Column(rest, entries);
    }

    /**
     * Adds a way and mixes anew.
     *
     * @return whether it helps
     */
    boolean add(double rest, double[] over) {
        columns.add(wayOf(rest, over));
        double before = cost();
        int entering = columns.size() - 1;
        if (reducedPrice(entering, prices()) >= -TINY) {
            return false;
        }
        for (int pivots = 0; entering >= 0 && pivots < MOST_PIVOTS; pivots++) {
            if (!pivot(entering)) {
                break;
            }
            entering = findEntering();
        }
        return cost() < before - TINY;
    }

    /** How much of each way, in the order in which they were added. */
    double[] shares() {
        double[] shares = new double[columns.size() - 2 * rows];
        for (int r = 0; r <= rows; r++) {
            if (basis[r] >= 2 * rows) {
                shares[basis[r] - 2 * rows] = amounts[r];
            }
        }
        return shares;
    }

    double cost() {
        double cost = 0;
        for (int r = 0; r <= rows; r++) {
            cost += columns.get(basis[r]).price() * amounts[r];
        }
        return cost;
    }

    /** What a unit spent at each supplier counts: 1 at full price, less where it is discounted. */
    double[] weights() {
        double[] prices = prices();
        double[] weights = new double[rows];
        for (int s = 0; s < rows; s++) {
            weights[s] = Math.clamp(-prices[s], leastWeight, 1);
        }
        return weights;
    }

    private double[] prices() {
        double[] prices = new double[rows + 1];
        for (int r = 0; r <= rows; r++) {
            double price = columns.get(basis[r]).price();
            for (int c = 0; c <= rows; c++) {
                prices[c] += price * inverse[r][c];
            }
        }
        return prices;
    }

    private double reducedPrice(int column, double[] prices) {
        double reduced = columns.get(column).price();
        for (int r = 0; r <= rows; r++) {
            reduced -= prices[r] * columns.get(column).entries()[r];
        }
        return reduced;
    }

    private int findEntering() {
        double[] prices = prices();
        int best = -1;
        double least = -TINY;
        for (int c = 0; c < columns.size(); c++) {
            double reduced = reducedPrice(c, prices);
            if (reduced < least) {
                least = reduced;
                best = c;
            }
        }
        return best;
    }

    private boolean pivot(int entering) {
        double[] entries = columns.get(entering).entries();
        double[] direction = new double[rows + 1];
        int leaving = -1;
        double ratio = Double.POSITIVE_INFINITY;
        for (int r = 0; r <= rows; r++) {
            for (int c = 0; c <= rows; c++) {
                direction[r] += inverse[r][c] * entries[c];
            }
            if (direction[r] > 1e-9 && amounts[r] / direction[r] < ratio) {
                ratio = amounts[r] / direction[r];
                leaving = r;
            }
        }
        if (leaving < 0) {
            return false;
        }
        double pivot = direction[leaving];
        for (int c = 0; c <= rows; c++) {
            inverse[leaving][c] /= pivot;
        }
        amounts[leaving] = ratio;
        for (int r = 0; r <= rows; r++) {
            if (r != leaving) {
                for (int c = 0; c <= rows; c++) {
                    inverse[r][c] -= direction[r] * inverse[leaving][c];
                }
                amounts[r] = Math.max(0, amounts[r] - direction[r] * ratio);
            }
        }
        basis[leaving] = entering;
        return true;
    }
}
