/**
 * Bayesian random effects as a model of a plan: priors, posteriors, probabilities.
 *
 * <p>Start at {@link gapwise.analysis.bayesian.BayesianModel}.
 */
package gapwise.analysis.bayesian;
