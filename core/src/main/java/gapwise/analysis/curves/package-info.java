/**
 * The tasks {@code reconstruct-curve} and {@code survival}: curves of times to an event.
 *
 * <p>Start at {@link gapwise.analysis.curves.CurveTask} and {@link
 * gapwise.analysis.curves.SurvivalTask}.
 */
package gapwise.analysis.curves;
