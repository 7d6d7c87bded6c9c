/**
 * What one piece of work may cost: how many rows, letters and draws, how much computing time, and
 * whether anybody still waits for it; and what keeps an answer, so that it costs nothing again.
 *
 * <p>Start at {@link gapwise.budget.Work}. Every room may ask it; it knows nothing of what is
 * computed.
 */
package gapwise.budget;
