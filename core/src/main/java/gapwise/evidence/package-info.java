/**
 * The record model: what a reviewer extracts from one publication, as immutable values.
 *
 * <p>Start at {@link gapwise.evidence.Study}. Values are kept as printed, with their unit ({@code
 * gapwise.evidence.unit}); the words they are coded in stand in {@code
 * gapwise.evidence.vocabulary}. Reading files and storing do not belong here, nor does any
 * statistic beyond describing a list of patients.
 */
package gapwise.evidence;
