/**
 * A figure of a paper read off: its axes marked, points set along a curve or on the signs of a
 * scatter, what they make shown over the picture, and taken into a draft. Start at {@link
 * gapwise.server.page.figure.FigurePage}.
 */
package gapwise.server.page.figure;
