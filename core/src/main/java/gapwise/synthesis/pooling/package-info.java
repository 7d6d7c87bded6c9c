/**
 * Pooling of study effects: estimators of the variance between studies, mean, its interval,
 * prediction interval, heterogeneity, subgroups, pooling of counts.
 *
 * <p>Start at {@link gapwise.synthesis.pooling.InverseVariance}. Estimators are listed in {@link
 * gapwise.synthesis.pooling.TauSquaredEstimators}, intervals in {@link
 * gapwise.synthesis.pooling.MeanIntervals}. Everything grows linearly with the number of studies.
 * Plans, files and JSON do not belong here.
 */
package gapwise.synthesis.pooling;
