/**
 * A review as a thing: what it asks of whom, which studies it takes, which differences matter, who
 * does what, how its protocol changed and why, and how far everybody has come. What it found, kept
 * to be held against later evidence, is in {@link gapwise.review.kept}. Knows no store. Start at
 * {@link gapwise.review.Review}.
 */
package gapwise.review;
