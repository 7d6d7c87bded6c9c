package gapwise.synthesis.bayes;

/**
 * What all studies together say of one study's true effect, and how much it counts for the mean.
 *
 * @param mean drawn from the study's own effect towards the mean
 * @param sd of its posterior
 * @param weight the posterior mean of w/sum w; all sum to 1
 */
public record TrueEffect(double mean, double sd, double weight) {}
