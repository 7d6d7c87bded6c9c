/**
 * Every plot: a figure as an immutable value, then its drawing as SVG, its rows as a table, its
 * picture as PNG. Scales, axes, text measure and marks belong here; no statistic is computed here,
 * numbers arrive computed and are only formatted, always by {@link gapwise.figure.Shown}.
 *
 * <p>Start at {@link gapwise.figure.Forest}, {@link gapwise.figure.ForestDrawing}, {@link
 * gapwise.figure.Funnel} and {@link gapwise.figure.Span}.
 */
package gapwise.figure;
