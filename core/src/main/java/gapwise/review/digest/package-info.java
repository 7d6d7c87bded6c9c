/**
 * Answers of every kind in short, so that they can be held against the answers of a later state:
 * which studies stand under them, and what they say. Start at {@link
 * gapwise.review.digest.Digested}.
 */
package gapwise.review.digest;
