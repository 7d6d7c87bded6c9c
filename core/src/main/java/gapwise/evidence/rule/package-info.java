/**
 * The kinds of rules for records: what each looks at (a study, a group of patients, a report, a
 * count, a summary, all studies) and the {@link gapwise.evidence.rule.Finding} it makes. The rules
 * themselves stand in {@code gapwise.evidence.check}.
 */
package gapwise.evidence.rule;
