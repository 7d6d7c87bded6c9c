/**
 * What may honestly be said of a claim that one method gives more or less of an outcome than
 * another: the comparisons there are, how they stand under other analyses, what lowers certainty
 * and what study would settle it. Every number comes from a plan; nothing is worked out here.
 *
 * <p>Start at {@link gapwise.claim.Claims}, which turns a {@link gapwise.claim.Claim} into a {@link
 * gapwise.claim.Verdict}.
 */
package gapwise.claim;
