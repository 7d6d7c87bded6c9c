/**
 * Costs against effects: every draw of every method on a plane, effect across and cost up, and how
 * often each method would be the better buy at each amount of money. Start at {@link
 * gapwise.figure.plane.Plane} and {@link gapwise.figure.plane.Acceptability}.
 */
package gapwise.figure.plane;
