/**
 * An outcome over the length of missing bone: series, single patients and the fitted curve with its
 * bands. Start at {@link gapwise.figure.bubble.Bubble}.
 */
package gapwise.figure.bubble;
