package org.fusewright.core.fitting;

/**
 * The best prices for what the demands ask for: no block of the forms from a given one on brings
 * more than it costs at these prices, so what is still asked for, at these prices, is a lower bound
 * of what it costs. This is the dual of the linear programme that lets blocks be broken; solved
 * with the primal simplex on a small dense tableau. Any prices that pass the feasibility check at
 * the end give a valid bound, so rounding can only weaken it.
 */
public final class Prices {

    /** More than all rounding of the sums below, far less than one block among a thousand. */
    private static final double SAFETY = 1 - 1e-11;

    private static final double TINY = 1e-9;

    private Prices() {}

    /**
     * The prices by row.
     *
     * @param give what one block brings, by row and form
     * @param asked by row
     * @param cost of one block, by form
     * @param from the first form that may still be used
     */
    public static double[] find(double[][] give, double[] asked, double[] cost, int from) {
        int rows = asked.length;
        int forms = cost.length - from;
        int columns = rows + forms;
        double[][] tableau = new double[forms + 1][columns + 1];
        int[] basis = new int[forms];
        for (int f = 0; f < forms; f++) {
            for (int k = 0; k < rows; k++) {
                tableau[f][k] = give[k][from + f];
            }
            tableau[f][rows + f] = 1;
            tableau[f][columns] = cost[from + f];
            basis[f] = rows + f;
        }
        for (int k = 0; k < rows; k++) {
            tableau[forms][k] = -Math.max(0, asked[k]);
        }
        int most = 20 * columns;
        for (int pivots = 0; pivots < most; pivots++) {
            int enter = -1;
            double steepest = -TINY;
            for (int c = 0; c < columns; c++) {
                if (tableau[forms][c] < steepest) {
                    steepest = tableau[forms][c];
                    enter = c;
                }
            }
            if (enter < 0) {
                break;
            }
            int leave = -1;
            double least = Double.POSITIVE_INFINITY;
            for (int f = 0; f < forms; f++) {
                if (tableau[f][enter] > TINY) {
                    double ratio = tableau[f][columns] / tableau[f][enter];
                    if (ratio < least) {
                        least = ratio;
                        leave = f;
                    }
                }
            }
            if (leave < 0) {
                break;
            }
            pivot(tableau, leave, enter);
            basis[leave] = enter;
        }
        double[] prices = new double[rows];
        for (int f = 0; f < forms; f++) {
            if (basis[f] < rows) {
                prices[basis[f]] = Math.max(0, tableau[f][columns]);
            }
        }
        return withinCost(prices, give, cost, from);
    }

    private static void pivot(double[][] tableau, int leave, int enter) {
        double[] row = tableau[leave];
        double by = row[enter];
        for (int c = 0; c < row.length; c++) {
            row[c] /= by;
        }
        for (double[] other : tableau) {
            double factor = other[enter];
            if (other != row && factor != 0) {
                for (int c = 0; c < row.length; c++) {
                    other[c] -= factor * row[c];
                }
            }
        }
    }

    private static double[] withinCost(double[] prices, double[][] give, double[] cost, int from) {
        double highest = 1;
        for (int f = from; f < cost.length; f++) {
            double worth = 0;
            for (int k = 0; k < prices.length; k++) {
                worth += give[k][f] * prices[k];
            }
            highest = Math.max(highest, worth / cost[f]);
        }
        for (int k = 0; k < prices.length; k++) {
            prices[k] *= SAFETY / highest;
        }
        return prices;
    }

    static double worth(double[] prices, double[] asked) {
        double worth = 0;
        for (int k = 0; k < asked.length; k++) {
            if (asked[k] > 0) {
                worth += asked[k] * prices[k];
            }
        }
        return worth;
    }
}
