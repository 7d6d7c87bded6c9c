/**
 * The forest plot: each series with its span, estimate and interval, blocks with their pooled
 * values, what was left out, over as many sheets as it takes. Start at {@link
 * gapwise.figure.forest.Forest}; {@code ForestDrawing} lays out, {@code ForestTable} lists.
 */
package gapwise.figure.forest;
