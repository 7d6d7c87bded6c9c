/**
 * What moderators explain of the differences between studies: read, held against the data, told.
 *
 * <p>Start at {@link gapwise.analysis.moderators.RegressionPart}.
 */
package gapwise.analysis.moderators;
