/**
 * A table of options as a summary of findings: methods by outcomes with how certain each number is
 * and why, to be taken along as a file. Start at {@link gapwise.decision.findings.Findings}.
 */
package gapwise.decision.findings;
