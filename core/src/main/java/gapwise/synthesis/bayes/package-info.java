/**
 * Bayesian random effects by numerical integration: priors, the posterior of mean, standard
 * deviation between studies, a further study and the studies' own true effects.
 *
 * <p>Start at {@link gapwise.synthesis.bayes.Posterior}. Nothing is sampled, so the same studies
 * always give the same bits. Plans and JSON do not belong here.
 */
package gapwise.synthesis.bayes;
