/**
 * From a question to the rows that answer it, with what was left out and why.
 *
 * <p>Start at {@link gapwise.selection.Selector}, which turns a {@link gapwise.selection.Question}
 * into a {@link gapwise.selection.Selection}; {@link gapwise.selection.QuestionJson} is the
 * question as a plan writes it. Decides which report of an arm counts; computes no statistic and
 * shows no Lucene type.
 */
package gapwise.selection;
