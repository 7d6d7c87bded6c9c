/**
 * Effects that come in clusters: several rows of one study, or studies of one team. Variances
 * between clusters and between the rows of one are estimated together, in time that grows with the
 * rows.
 *
 * <p>Start at {@link gapwise.synthesis.multilevel.ThreeLevelPooling}, or with moderators at {@link
 * gapwise.synthesis.multilevel.ThreeLevelModel}. What a column means and how a plan is written do
 * not belong here.
 */
package gapwise.synthesis.multilevel;
