/**
 * Pooling of study effects: mean, its interval, prediction interval, subgroups, pooling of counts.
 *
 * <p>Start at {@link gapwise.synthesis.pooling.InverseVariance}. Intervals are listed in {@link
 * gapwise.synthesis.pooling.MeanIntervals}; the variance between studies has a room of its own.
 * Everything grows linearly with the number of studies. Plans, files and JSON do not belong here.
 */
package gapwise.synthesis.pooling;
