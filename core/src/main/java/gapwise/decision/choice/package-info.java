/**
 * A table of options taken further, for whoever asks: weighed by what matters to a patient, and
 * reckoned in costs. What is uncertain of an outcome is drawn from the posterior of its average.
 *
 * <p>Start at {@link gapwise.decision.choice.WeighedTable} and {@link
 * gapwise.decision.choice.CostedTable}.
 */
package gapwise.decision.choice;
