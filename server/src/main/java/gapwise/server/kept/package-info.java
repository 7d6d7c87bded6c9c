/**
 * Questions that a team keeps, held against one state of the evidence: which pages can be kept,
 * their answers in short, and what moved. Start at {@link gapwise.server.kept.KeptAnswers}.
 */
package gapwise.server.kept;
