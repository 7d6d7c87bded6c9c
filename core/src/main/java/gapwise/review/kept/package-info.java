/**
 * Questions that a team keeps: their address, a digest of their answer in one state of the
 * evidence, and what moved since. Works nothing out: {@code review.digest} does. Start at {@link
 * gapwise.review.kept.KeptQuestion}.
 */
package gapwise.review.kept;
