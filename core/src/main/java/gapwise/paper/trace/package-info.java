/**
 * Figures read off: axes from marks, points and curves in the units of the axes, and proposals
 * where a page holds a figure as drawn lines. A proposal is never an answer: a person confirms it.
 *
 * <p>Start at {@link gapwise.paper.trace.Axes} for marks set by hand, at {@link
 * gapwise.paper.trace.Figures} for proposals. Times of patients behind a curve belong to {@code
 * paper.curve}.
 */
package gapwise.paper.trace;
