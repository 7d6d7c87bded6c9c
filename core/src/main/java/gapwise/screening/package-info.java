/**
 * Which papers of a search a review takes, by two people who do not see each other's choice: what
 * each chose, where they stand together, how far they agree, and the counts that must add up. Knows
 * no store. Start at {@link gapwise.screening.Board}.
 */
package gapwise.screening;
