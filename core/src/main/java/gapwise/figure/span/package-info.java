/**
 * A missing length of bone as it was reported, drawn as a shaft with its gap to scale. Start at
 * {@link gapwise.figure.span.Span}; {@link gapwise.figure.span.SpanDrawing} draws one alone, the
 * forest plot a column of them.
 */
package gapwise.figure.span;
