/**
 * What every plot is: a value that names itself, tells where its numbers come from, can be drawn
 * for each medium and listed. No statistic is computed in any room of figures; numbers arrive
 * computed and are only formatted.
 *
 * <p>Start at {@link gapwise.figure.Figure}. Each kind of figure is a room beside this one ({@code
 * forest}, {@code bubble}, {@code funnel}, {@code curve}, {@code network}, {@code timeline}, {@code
 * plane}, {@code ranks}); they stand on {@code value}, {@code drawing}, {@code span} and {@code
 * page} and know nothing of each other. {@code file} makes files of any.
 */
package gapwise.figure;
