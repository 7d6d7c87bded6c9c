/**
 * Paper and pen of every figure: the canvas ({@link gapwise.figure.drawing.Svg}), letters and their
 * measure, sizes for each {@link gapwise.figure.drawing.Medium}, axis and ticks, keys, and the
 * marks that several kinds share. What one kind alone draws stands with that kind.
 */
package gapwise.figure.drawing;
