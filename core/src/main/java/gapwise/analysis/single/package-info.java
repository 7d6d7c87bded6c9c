/**
 * The tasks {@code interval} and {@code convert}, which tell of each row alone.
 *
 * <p>Start at {@link gapwise.analysis.single.IntervalTask} and {@link
 * gapwise.analysis.single.ConvertTask}.
 */
package gapwise.analysis.single;
