/**
 * Times of patients behind a curve that was read off a figure, and how well the curve that they
 * make agrees with the printed one.
 *
 * <p>Start at {@link gapwise.paper.curve.Rebuilt}. A room of its own, so that reading figures needs
 * no statistics.
 */
package gapwise.paper.curve;
