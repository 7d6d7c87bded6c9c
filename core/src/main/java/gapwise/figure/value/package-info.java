/**
 * The numbers of a figure before anything is drawn: an estimate with its limits, the measure that
 * says what they are, and {@link gapwise.figure.value.Shown}, which alone turns them into words.
 * Nothing is computed here and nothing knows of drawing.
 */
package gapwise.figure.value;
