/**
 * Numbers for one person to read: a hundred marks of which some are filled ({@link
 * gapwise.figure.array.HundredArray}), and what a treatment takes on an axis of months ({@link
 * gapwise.figure.array.StageStrip}).
 */
package gapwise.figure.array;
