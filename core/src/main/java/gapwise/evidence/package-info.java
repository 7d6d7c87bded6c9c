/**
 * The record model: what a reviewer extracts from one publication, as immutable values.
 *
 * <p>Start at {@link gapwise.evidence.Study}. Vocabularies (methods, outcomes, details) are data
 * beside this package: one entry adds a method or an outcome. Values are kept as printed, with
 * their unit; {@link gapwise.evidence.Unit} compares them. Reading files and storing do not belong
 * here, nor does any statistic beyond describing a list of patients.
 */
package gapwise.evidence;
