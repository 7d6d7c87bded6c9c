/**
 * What was done, in the words that a journal prints: from a result and the filled-in plan in it to
 * the paragraph on methods, its references and its appendix. Each sentence says one setting that
 * had a bearing, or one thing that happened.
 *
 * <p>Start at {@link gapwise.report.MethodsParagraph}. Sentences stand in methods.properties,
 * papers in references.json. Nothing is computed here.
 */
package gapwise.report;
