/**
 * Groups of studies as a part of a synthesis: each pooled by itself or with a variance that all
 * share, and compared.
 *
 * <p>Start at {@link gapwise.analysis.subgroups.SubgroupPart}.
 */
package gapwise.analysis.subgroups;
