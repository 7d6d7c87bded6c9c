/**
 * Treatments compared through a network of studies by generalised least squares on contrasts.
 *
 * <p>Start at {@link gapwise.synthesis.network.Network}. Studies become independent rows once
 * ({@link gapwise.synthesis.network.NetworkRows}), so that the estimators of the variance between
 * studies in {@code synthesis.pooling} serve here too. How effects come from arms belongs in {@code
 * effect}.
 */
package gapwise.synthesis.network;
