package org.fusewright.core.formula;

import java.math.BigDecimal;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Arithmetic over named values. */
public sealed interface Expression {

    /** A named value. */
    record Known(Quantity quantity) implements Expression {}

    /** A number that the formula itself holds. */
    record Fixed(double number) implements Expression {}

    /** Two expressions with an operator between them. */
    record Joined(Operator operator, Expression left, Expression right) implements Expression {}

    /** A function of one expression or several. */
    record Applied(Function function, List<Expression> arguments) implements Expression {

        public Applied {
            arguments = List.copyOf(arguments);
        }
    }

    /** Operators by rising strength of binding. */
    enum Operator {
        PLUS("+", 1),
        MINUS("-", 1),
        TIMES("*", 2),
        OVER("/", 2),
        TO_THE("^", 3);

        private final String sign;
        private final int binding;

        Operator(String sign, int binding) {
            this.sign = sign;
            this.binding = binding;
        }

        String sign() {
            return sign;
        }

        int binding() {
            return binding;
        }

        private double of(double left, double right) {
            return switch (this) {
                case PLUS -> left + right;
                case MINUS -> left - right;
                case TIMES -> left * right;
                case OVER -> left / right;
                case TO_THE -> Math.pow(left, right);
            };
        }
    }

    /** Functions by the names that spreadsheets give them. */
    enum Function {
        SQRT,
        MAX,
        MIN,
        CEILING;

        private double of(double[] values) {
            double result = values[0];
            for (int i = 1; i < values.length; i++) {
                result = this == MAX ? Math.max(result, values[i]) : Math.min(result, values[i]);
            }
            return switch (this) {
                case SQRT -> Math.sqrt(result);
                case CEILING -> Math.ceil(result);
                case MAX, MIN -> result;
            };
        }
    }

    static Expression of(Quantity quantity) {
        return new Known(quantity);
    }

    static Expression fixed(double number) {
        return new Fixed(number);
    }

    static Expression sum(List<Expression> terms) {
        return terms.stream().reduce(Expression::plus).orElseGet(() -> fixed(0));
    }

    static Expression largest(Expression... of) {
        return new Applied(Function.MAX, List.of(of));
    }

    static Expression smallest(Expression... of) {
        return new Applied(Function.MIN, List.of(of));
    }

    static Expression root(Expression of) {
        return new Applied(Function.SQRT, List.of(of));
    }

    static Expression roundedUp(Expression of) {
        return new Applied(Function.CEILING, List.of(of));
    }

    default Expression plus(Expression other) {
        return new Joined(Operator.PLUS, this, other);
    }

    default Expression minus(Expression other) {
        return new Joined(Operator.MINUS, this, other);
    }

    default Expression times(Expression other) {
        return new Joined(Operator.TIMES, this, other);
    }

    default Expression over(Expression other) {
        return new Joined(Operator.OVER, this, other);
    }

    default Expression toThe(Expression other) {
        return new Joined(Operator.TO_THE, this, other);
    }

    /** What it comes to with the values that its names are given. */
    default double value(ToDoubleFunction<Quantity> values) {
        return switch (this) {
            case Known(Quantity quantity) -> values.applyAsDouble(quantity);
            case Fixed(double number) -> number;
            case Joined(Operator operator, Expression left, Expression right) ->
                    operator.of(left.value(values), right.value(values));
            case Applied(Function function, List<Expression> arguments) ->
                    function.of(arguments.stream().mapToDouble(a -> a.value(values)).toArray());
        };
    }

    /** As a spreadsheet or any calculator reads it: "I * (R_1 + R_2) / 1000". */
    default String text() {
        return switch (this) {
            case Known(Quantity quantity) -> quantity.name();
            case Fixed(double number) -> number(number);
            case Joined(Operator operator, Expression left, Expression right) ->
                    left.within(operator, false)
                            + " "
                            + operator.sign()
                            + " "
                            + right.within(operator, true);
            case Applied(Function function, List<Expression> arguments) ->
                    function
                            + "("
                            + String.join(", ", arguments.stream().map(Expression::text).toList())
                            + ")";
        };
    }

    private String within(Operator outer, boolean right) {
        boolean looser =
                this instanceof Joined inner
                        && (inner.operator().binding() < outer.binding()
                                || inner.operator().binding() == outer.binding()
                                        && (right
                                                        && (outer == Operator.MINUS
                                                                || outer == Operator.OVER)
                                                || outer == Operator.TO_THE));
        return looser ? "(" + text() + ")" : text();
    }

    /** A number with all its decimals and no exponent. */
    static String number(double number) {
        return new BigDecimal(Double.toString(number)).stripTrailingZeros().toPlainString();
    }
}
