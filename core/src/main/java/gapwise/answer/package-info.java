/**
 * From a question about the evidence base to its plan, its result, its sentences and its figure.
 * Pages, API and command line answer through this room, so each says the same.
 *
 * <p>Start at {@link gapwise.answer.Answers}. Which rows count is decided in {@code selection},
 * every number is computed in {@code analysis}; here they are put together and worded.
 */
package gapwise.answer;
