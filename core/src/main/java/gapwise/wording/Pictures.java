package gapwise.wording;

import gapwise.evidence.ArmDefect;
import gapwise.figure.span.SpanDrawing;
import java.util.Optional;

/** Drawings as parts of a page. */
public final class Pictures {
  /** Length in cm that a row of a list holds; longer spans widen the scale of their own row. */
  public static final double ROW_REACH_CENTIMETRES = 15;

  private static final double ROW_WIDTH = 170;

  private Pictures() {}

  /** A span for a list, all at one scale. */
  public static String span(Optional<ArmDefect> defect, double reachCentimetres) {
    return SpanDrawing.draw(Defects.span(defect), reachCentimetres, ROW_WIDTH).inline();
  }
}
