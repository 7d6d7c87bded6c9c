/**
 * The methods side by side for one situation: what is known of each of the outcomes that matter,
 * how well it fits, how certain it is, and in which way nothing is known.
 */
package gapwise.decision.option;
