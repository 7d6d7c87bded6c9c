/**
 * From a question to the rows that answer it, with what was left out and why.
 *
 * <p>Start at {@link gapwise.selection.Question} and {@link gapwise.selection.Selection}. Decides
 * which report of an arm counts; computes no statistic and shows no Lucene type.
 */
package gapwise.selection;
