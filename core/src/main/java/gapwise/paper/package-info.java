/**
 * A paper as a PDF file: its pages as pictures, their words with boxes and reading order, lines
 * drawn on them, and places that can be found again.
 *
 * <p>Start at {@link gapwise.paper.Paper#open}. Every length is in points, from the top left corner
 * of the page as it is displayed; pages count from 1. A file is never trusted: it is read and drawn
 * within {@link gapwise.paper.Caps} by a process of its own ({@code Readers}, {@code ReaderMain}),
 * which is ended where it does not end. What a table, a curve or a number means does not belong
 * here.
 */
package gapwise.paper;
