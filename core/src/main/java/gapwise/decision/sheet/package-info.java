/**
 * The sheet that patient and team read together: one page in plain words, one with the evidence
 * behind it. Start at {@link gapwise.decision.sheet.Sheet}; nothing is laid out here.
 */
package gapwise.decision.sheet;
