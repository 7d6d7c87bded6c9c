/**
 * Treatments compared through a network of studies, whose rows are arms or contrasts.
 *
 * <p>Start at {@link gapwise.analysis.network.NetworkModel}.
 */
package gapwise.analysis.network;
