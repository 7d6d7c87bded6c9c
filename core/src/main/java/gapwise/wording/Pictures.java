package gapwise.wording;

import gapwise.evidence.ArmDefect;
import gapwise.evidence.vocabulary.Method;
import gapwise.figure.drawing.MethodMark;
import gapwise.figure.drawing.MethodShape;
import gapwise.figure.drawing.Svg;
import gapwise.figure.span.SpanDrawing;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Drawings as parts of a page. */
public final class Pictures {
  /** Length in cm that a row of a list holds; longer spans widen the scale of their own row. */
  public static final double ROW_REACH_CENTIMETRES = 15;

  private static final double ROW_WIDTH = 170;

  private static final double MARK = 16;

  /** Drawn once each, for lists have one a line. */
  private static final Map<String, String> MARKS =
      Method.vocabulary().all().stream()
          .collect(Collectors.toUnmodifiableMap(Method::code, Pictures::drawn));

  private Pictures() {}

  /** The mark of a method, the same as in figures; says nothing, for the name stands beside it. */
  public static String mark(Method method) {
    return Optional.ofNullable(MARKS.get(method.code())).orElseGet(() -> drawn(method));
  }

  private static String drawn(Method method) {
    String side = String.valueOf((int) MARK);
    Svg svg =
        new Svg()
            .open(
                "svg",
                "class",
                "mark",
                "viewBox",
                "0 0 " + side + " " + side,
                "aria-hidden",
                "true",
                "focusable",
                "false");
    MethodMark kind =
        new MethodMark(method.code(), method.shortLabel(), method.mark(), method.colour());
    MethodShape.draw(svg, kind, MARK / 2, MARK / 2, MARK / 2 - 1);
    return svg.end();
  }

  /** A span for a list, all at one scale. */
  public static String span(Optional<ArmDefect> defect, double reachCentimetres) {
    return SpanDrawing.draw(Defects.span(defect), reachCentimetres, ROW_WIDTH).inline();
  }
}
