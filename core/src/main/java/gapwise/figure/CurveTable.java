package gapwise.figure;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * The data of a {@link CurveFigure} as rows, for a table beside it, which a screen reader reads.
 */
public record CurveTable(List<Line> lines) {
  /**
   * One curve at one time of the axis.
   *
   * @param share as it is drawn, 0 to 1: with the event if the figure rises; empty beyond its end
   * @param atRisk patients still followed; empty if not known
   */
  public record Line(String curve, double time, OptionalDouble share, OptionalInt atRisk) {}

  public CurveTable {
    lines = List.copyOf(lines);
  }

  /** Every curve at every round time of the figure's axis. */
  public static CurveTable of(CurveFigure figure) {
    List<Line> lines = new ArrayList<>();
    for (Curve curve : figure.curves()) {
      figure
          .timeTicks()
          .values()
          .forEach(tick -> lines.add(line(figure, curve, tick.doubleValue())));
    }
    return new CurveTable(lines);
  }

  private static Line line(CurveFigure figure, Curve curve, double time) {
    return new Line(
        curve.name(),
        time,
        time <= curve.end()
            ? OptionalDouble.of(figure.height(curve.shareAt(time)))
            : OptionalDouble.empty(),
        curve.atRisk().stream()
            .filter(mark -> mark.time() == time)
            .mapToInt(Curve.AtRisk::patients)
            .findFirst());
  }
}
