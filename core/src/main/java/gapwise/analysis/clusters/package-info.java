/**
 * Effects that come in clusters: three levels, and standard errors that allow for clusters.
 *
 * <p>Start at {@link gapwise.analysis.clusters.ClusteredEffectsModel}.
 */
package gapwise.analysis.clusters;
