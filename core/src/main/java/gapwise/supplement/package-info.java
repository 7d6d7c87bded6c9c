/**
 * The supplement of a paper: data, plans, results, figures, tables, methods in words and citations
 * in one package that anybody with this program can run again, and the running again, which holds
 * every number against the one that was written. Start at {@link
 * gapwise.supplement.SupplementWriter} and {@link gapwise.supplement.Rerun}.
 */
package gapwise.supplement;
