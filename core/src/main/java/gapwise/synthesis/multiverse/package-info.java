/**
 * One body of evidence analysed in every way its analyst could have chosen, and what the choices do
 * to the pooled value. How effects are taken and pooled belongs to {@code effect} and {@code
 * synthesis.pooling}.
 *
 * <p>Start at {@link gapwise.synthesis.multiverse.Multiverse}.
 */
package gapwise.synthesis.multiverse;
