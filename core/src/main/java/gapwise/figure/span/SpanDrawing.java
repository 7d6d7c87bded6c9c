package gapwise.figure.span;

import gapwise.figure.drawing.Lettering;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Svg;
import gapwise.figure.value.Check;

/** A single span as a small drawing, for rows, filters and lists of a page. */
public final class SpanDrawing {
  private static final double TALLEST_BONE = 15;
  private static final double HEIGHT = 26;

  private SpanDrawing() {}

  /**
   * Draws one span.
   *
   * @param span what was reported
   * @param reachCentimetres length that the width must hold; give all spans of one list the same,
   *     so that they share a scale. At least the span's own reach is held.
   * @param width width of the drawing, 90 or more; under 150 a long number may be left to the words
   *     of the title
   */
  public static Picture draw(Span span, double reachCentimetres, double width) {
    if (!(Check.finite(width, "width") >= 90)) {
      throw new IllegalArgumentException("a span needs a width of 90 or more, was " + width);
    }
    double own = span.reachCentimetres().orElse(0);
    double reach = Math.max(1, Math.max(own, Check.centimetres(reachCentimetres, "reach")));
    SpanMark mark =
        SpanMark.reaching(
            reach, width - 2, Math.min(TALLEST_BONE, width / 10), Lettering.plain(12));
    Svg svg = new Svg().begin(width, HEIGHT, "px", "img", "Missing bone: " + span.words());
    mark.draw(svg, span, 1, 9.5);
    return new Picture(svg.end(), width, HEIGHT);
  }
}
