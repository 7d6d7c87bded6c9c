/**
 * The task {@code multiverse}: one body of evidence analysed in every way asked for.
 *
 * <p>Start at {@link gapwise.analysis.multiverse.MultiverseTask}.
 */
package gapwise.analysis.multiverse;
