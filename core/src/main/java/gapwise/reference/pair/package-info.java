/**
 * Records proposed as copies of one paper or as related, each with its reasons in words, and papers
 * of which a notice tells that they were retracted or corrected.
 *
 * <p>Start at {@link gapwise.reference.pair.ReferenceProposals}. Nothing is merged here: a person
 * decides.
 */
package gapwise.reference.pair;
