/**
 * The rules of what is impossible or doubtful in a record: one rule, one small class, listed in one
 * place. The kinds of rules and what they find stand in {@code gapwise.evidence.rule}.
 *
 * <p>Start at {@link gapwise.evidence.check.EvidenceCheck}. A new rule is a class and its line
 * there. Where a finding stands in a sheet is for whoever read the sheet to say. Limits are common
 * practice without a source unless the rule names one.
 */
package gapwise.evidence.check;
