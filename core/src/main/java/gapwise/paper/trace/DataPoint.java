package gapwise.paper.trace;

/**
 * Values of both axes at one place.
 *
 * @param x in the unit of its axis
 * @param y in the unit of its axis; a share where the axis is printed in percent
 */
public record DataPoint(double x, double y) {}
