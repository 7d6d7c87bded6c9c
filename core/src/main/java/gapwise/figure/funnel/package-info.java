/**
 * The funnel plot: effects of series over their standard errors, with contours and imagined series.
 * Start at {@link gapwise.figure.funnel.Funnel}.
 */
package gapwise.figure.funnel;
