/**
 * What is asked about one patient, without who it is, and how the groups of patients behind a
 * number match it: inside, at the edge, outside or unknown, attribute by attribute.
 */
package gapwise.decision.situation;
