/**
 * What there is and what is missing: groups of patients counted by method and by length of missing
 * bone, and which methods stand side by side within a study.
 *
 * <p>Start at {@link gapwise.answer.grid.EvidenceGrid} and {@link gapwise.answer.grid.HeadToHead}.
 * It counts what {@code search} has indexed; nothing is pooled here.
 */
package gapwise.answer.grid;
