/**
 * An invented body of evidence for demonstration and for tests: what happens to each limb is drawn
 * from a known truth, then reported as untidily as papers report it. Start at {@link
 * gapwise.demonstration.DemonstrationEvidence}; the truth stands in {@link
 * gapwise.demonstration.Truth}, what each study reports and how in the classes named Plans. Nothing
 * here describes a real patient, hospital, author or paper.
 */
package gapwise.demonstration;
