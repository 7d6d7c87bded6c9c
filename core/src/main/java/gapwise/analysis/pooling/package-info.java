/**
 * Studies with their effects, how they are pooled, and what is told of the pooled value.
 *
 * <p>Start at {@link gapwise.analysis.pooling.Synthesis}. A model is one class that is a {@link
 * gapwise.analysis.pooling.Model}. Formulas stand in synthesis.
 */
package gapwise.analysis.pooling;
