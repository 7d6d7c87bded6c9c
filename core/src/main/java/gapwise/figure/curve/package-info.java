/**
 * Curves of times to an event with the numbers at risk under them. Start at {@link
 * gapwise.figure.curve.CurveFigure}.
 */
package gapwise.figure.curve;
