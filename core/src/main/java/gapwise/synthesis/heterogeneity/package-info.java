/**
 * The variance between studies: the sample of effects, the means it may have, the estimators of tau
 * squared, their intervals, what Q says, and a tau that is not taken as known. One estimator one
 * class, listed in {@link gapwise.synthesis.heterogeneity.TauSquaredEstimators}. Pooling does not
 * belong here.
 */
package gapwise.synthesis.heterogeneity;
