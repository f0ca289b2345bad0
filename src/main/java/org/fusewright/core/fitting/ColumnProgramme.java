package org.fusewright.core.fitting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A linear programme whose columns are added one by one: the least cost of amounts, none negative,
 * that give each row exactly its right side. What no column gives yet can be had at a high penalty.
 * Revised simplex with a dense inverse, primal after columns were added and dual after the right
 * side was changed; for some hundred rows.
 */
final class ColumnProgramme {

    record Column(int[] rows, double[] coefficients, double cost) {}

    private static final double TINY = 1e-9;

    /** A smaller one would blow rounding up. */
    private static final double LEAST_PIVOT = 1e-7;

    private static final int PIVOTS_BETWEEN_INVERSIONS = 100;

    /** Pivots without progress after which columns are picked by number, which always ends. */
    private static final int MOST_STALLED = 60;

    /** Far more than are needed; only rounding could ask for them. */
    private static final int MOST_PIVOTS = 20_000;

    private static final int NONE = Integer.MIN_VALUE;

    private final int rows;
    private final List<Column> columns = new ArrayList<>();

    /** The column that stands for the penalty of each row. */
    private final List<Column> penalties = new ArrayList<>();

    private double[] rightSide;

    /** The column in each row of the basis; below 0 a penalty, -1 that of the first row. */
    private final int[] basis;

    private double[][] inverse;
    private final double[] amounts;
    private final double[] prices;
    private int pivots;

    ColumnProgramme(double[] rightSide, double penalty) {
        this.rightSide = rightSide;
        rows = rightSide.length;
        basis = new int[rows];
        for (int r = 0; r < rows; r++) {
            basis[r] = -1 - r;
            penalties.add(new Column(new int[] {r}, new double[] {1}, penalty));
        }
        inverse = identity();
        amounts = rightSide.clone();
        prices = new double[rows];
        Arrays.fill(prices, penalty);
    }

    private double[][] identity() {
        double[][] identity = new double[rows][rows];
        for (int r = 0; r < rows; r++) {
            identity[r][r] = 1;
        }
        return identity;
    }

    void add(Column column) {
        columns.add(column);
    }

    int size() {
        return columns.size();
    }

    private Column column(int number) {
        return number < 0 ? penalties.get(-1 - number) : columns.get(number);
    }

    /** What one more unit of each row would cost. */
    double[] prices() {
        return prices;
    }

    double cost() {
        double cost = 0;
        for (int r = 0; r < rows; r++) {
            cost += amounts[r] * column(basis[r]).cost;
        }
        return cost;
    }

    /** By number of column. */
    double[] amounts() {
        double[] all = new double[columns.size()];
        for (int r = 0; r < rows; r++) {
            if (basis[r] >= 0) {
                all[basis[r]] = amounts[r];
            }
        }
        return all;
    }

    /** Finds the least cost after columns were added; false when it does not come to an end. */
    boolean solve(Budget budget) {
        int stalled = 0;
        int last = pivots + MOST_PIVOTS;
        while (pivots < last) {
            boolean first = stalled > MOST_STALLED;
            int enter = enter(first);
            if (enter == NONE) {
                return true;
            }
            double[] direction = direction(columns.get(enter));
            int leave = leave(direction, first);
            if (leave == NONE || !paysFor(budget)) {
                return leave == NONE;
            }
            stalled = amounts[leave] > TINY ? 0 : stalled + 1;
            pivot(enter, leave, direction);
        }
        return false;
    }

    /** Finds the least cost for another right side; false when it does not come to an end. */
    boolean solve(double[] otherSide, Budget budget) {
        rightSide = otherSide;
        setAmounts();
        int last = pivots + MOST_PIVOTS;
        while (pivots < last) {
            int leave = mostNegative();
            if (leave == NONE) {
                return true;
            }
            int enter = enterInstead(leave);
            if (enter == NONE || !paysFor(budget)) {
                return false;
            }
            pivot(enter, leave, direction(column(enter)));
        }
        return false;
    }

    private boolean paysFor(Budget budget) {
        return budget.take(1 + (rows * (long) rows + 8L * columns.size()) / 250);
    }

    private int enter(boolean first) {
        int enter = NONE;
        double best = -TINY;
        for (int c = 0; c < columns.size(); c++) {
            double reduced = reduced(columns.get(c));
            if (reduced < best) {
                enter = c;
                if (first) {
                    return enter;
                }
                best = reduced;
            }
        }
        return enter;
    }

    /** What a unit of the column costs more than its rows are worth. */
    double reduced(Column column) {
        double reduced = column.cost;
        for (int n = 0; n < column.rows.length; n++) {
            reduced -= column.coefficients[n] * prices[column.rows[n]];
        }
        return reduced;
    }

    private double[] direction(Column column) {
        double[] direction = new double[rows];
        for (int r = 0; r < rows; r++) {
            direction[r] = entry(r, column);
        }
        return direction;
    }

    private double entry(int row, Column column) {
        double entry = 0;
        double[] inverseRow = inverse[row];
        for (int n = 0; n < column.rows.length; n++) {
            entry += inverseRow[column.rows[n]] * column.coefficients[n];
        }
        return entry;
    }

    private int leave(double[] direction, boolean first) {
        int leave = NONE;
        double least = Double.POSITIVE_INFINITY;
        for (int r = 0; r < rows; r++) {
            if (direction[r] > LEAST_PIVOT) {
                double ratio = Math.max(0, amounts[r]) / direction[r];
                boolean tie = leave >= 0 && Math.abs(ratio - least) <= TINY;
                boolean better =
                        first
                                ? basis[r] < basis[Math.max(0, leave)]
                                : isLarger(direction, r, leave);
                if (tie ? better : ratio < least) {
                    least = ratio;
                    leave = r;
                }
            }
        }
        return leave;
    }

    private static boolean isLarger(double[] direction, int r, int than) {
        return than >= 0 && direction[r] > direction[than];
    }

    private int mostNegative() {
        int most = NONE;
        double least = -TINY;
        for (int r = 0; r < rows; r++) {
            if (amounts[r] < least) {
                most = r;
                least = amounts[r];
            }
        }
        return most;
    }

    /** The column that raises a negative amount at the least cost. */
    private int enterInstead(int leave) {
        int enter = NONE;
        double least = Double.POSITIVE_INFINITY;
        for (int c = -rows; c < columns.size(); c++) {
            Column column = column(c);
            double entry = entry(leave, column);
            if (entry < -LEAST_PIVOT) {
                double ratio = Math.max(0, reduced(column)) / -entry;
                if (ratio < least) {
                    enter = c;
                    least = ratio;
                }
            }
        }
        return enter;
    }

    private void pivot(int enter, int leave, double[] direction) {
        double reduced = reduced(column(enter));
        double by = direction[leave];
        double[] row = inverse[leave];
        for (int c = 0; c < rows; c++) {
            row[c] /= by;
        }
        double amount = amounts[leave] / by;
        for (int r = 0; r < rows; r++) {
            double factor = direction[r];
            if (r == leave || factor == 0) {
                continue;
            }
            double[] other = inverse[r];
            for (int c = 0; c < rows; c++) {
                other[c] -= factor * row[c];
            }
            amounts[r] -= factor * amount;
        }
        amounts[leave] = amount;
        basis[leave] = enter;
        for (int c = 0; c < rows; c++) {
            prices[c] += reduced * row[c];
        }
        if (++pivots % PIVOTS_BETWEEN_INVERSIONS == 0) {
            invert();
        }
    }

    /** Works inverse, amounts and prices out anew, without the rounding of many pivots. */
    private void invert() {
        double[][] matrix = new double[rows][rows];
        for (int r = 0; r < rows; r++) {
            Column column = column(basis[r]);
            for (int n = 0; n < column.rows.length; n++) {
                matrix[column.rows[n]][r] = column.coefficients[n];
            }
        }
        double[][] found = identity();
        for (int c = 0; c < rows; c++) {
            int best = c;
            for (int r = c + 1; r < rows; r++) {
                if (Math.abs(matrix[r][c]) > Math.abs(matrix[best][c])) {
                    best = r;
                }
            }
            swap(matrix, c, best);
            swap(found, c, best);
            double by = matrix[c][c];
            for (int n = 0; n < rows; n++) {
                matrix[c][n] /= by;
                found[c][n] /= by;
            }
            for (int r = 0; r < rows; r++) {
                double factor = matrix[r][c];
                if (r != c && factor != 0) {
                    for (int n = 0; n < rows; n++) {
                        matrix[r][n] -= factor * matrix[c][n];
                        found[r][n] -= factor * found[c][n];
                    }
                }
            }
        }
        inverse = found;
        setAmounts();
        Arrays.fill(prices, 0);
        for (int r = 0; r < rows; r++) {
            double cost = column(basis[r]).cost;
            for (int c = 0; c < rows; c++) {
                prices[c] += cost * inverse[r][c];
            }
        }
    }

    private void setAmounts() {
        for (int r = 0; r < rows; r++) {
            double amount = 0;
            for (int c = 0; c < rows; c++) {
                amount += inverse[r][c] * rightSide[c];
            }
            amounts[r] = amount;
        }
    }

    private static void swap(double[][] matrix, int a, int b) {
        double[] row = matrix[a];
        matrix[a] = matrix[b];
        matrix[b] = row;
    }
}
