package org.fusewright.core.sizing;

/**
 * How a lead's conductor warms under a constant current, in degrees Celsius and seconds. {@code
 * secondsTo} is infinite where it never gets there and 0 where it is there already.
 */
interface Warming {

    double steadyC(double currentA);

    double secondsTo(double currentA, double fromC, double toC);

    double afterC(double currentA, double fromC, double seconds);
}
