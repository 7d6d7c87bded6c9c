/**
 * The evidence base: studies kept in the store with their history, and the record of imports; who
 * may do what next.
 *
 * <p>Start at {@link gapwise.curation.EvidenceBase}. No SQL, no page, and no decision about what is
 * pooled.
 */
package gapwise.curation;
