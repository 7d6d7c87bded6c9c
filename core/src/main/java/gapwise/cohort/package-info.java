/**
 * One paper, one cohort: which records may be of one paper, or tell of the same patients, and what
 * a reviewer settled of it.
 *
 * <p>Start at {@link gapwise.cohort.OverlapSearch}, which takes studies one at a time and proposes
 * pairs, each a {@link gapwise.cohort.Proposal} with its reasons. A {@link
 * gapwise.cohort.CohortDecision} is the answer of a person, and {@link gapwise.cohort.CohortLinks}
 * what follows from all answers. Proposes only: nothing here leaves a study out.
 */
package gapwise.cohort;
