/**
 * How certain a number is, by the papers of the GRADE working group: where the evidence starts,
 * what lowers and raises it, each proposed from the numbers with its reason and settled by a
 * person.
 */
package gapwise.decision.certainty;
