/**
 * What is wrong or doubtful, as a value: where, a stable code, words for people.
 *
 * <p>Start at {@link gapwise.problem.Problem} and {@link gapwise.problem.Problems}. The rules that
 * find problems live elsewhere; this room knows nothing of ours.
 */
package gapwise.problem;
