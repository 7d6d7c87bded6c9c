package gapwise.figure.curve;

import gapwise.figure.FigureProvenance;
import gapwise.figure.value.Limits;
import gapwise.figure.value.SeriesCount;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Curves for tests. Every name and number in them is invented. */
public final class InventedCurves {
  private InventedCurves() {}

  private static Curve curve(String name, boolean pooled, double rate, int patients) {
    List<Curve.Step> steps = new ArrayList<>();
    for (int month = 2; month <= 24; month += 2) {
      double share = Math.exp(-rate * month);
      steps.add(
          new Curve.Step(
              month,
              share,
              pooled
                  ? Optional.of(new Limits(share * 0.7, Math.min(1, share * 1.4)))
                  : Optional.empty()));
    }
    List<Curve.AtRisk> atRisk =
        CurveFigure.marks(26).stream()
            .filter(time -> time <= 26)
            .map(time -> new Curve.AtRisk(time, (int) (patients * Math.exp(-rate * time))))
            .toList();
    return new Curve(name, pooled, steps, 26, pooled ? List.of() : List.of(5.0, 9.0, 26.0), atRisk);
  }

  /** Three methods and all series pooled. */
  public static CurveFigure figure(boolean rising) {
    return new CurveFigure(
        "Time to union after loss of 4 to 8 cm of tibia",
        List.of("Half had united by 9 months after transport and by 6 months with a membrane."),
        rising,
        rising ? "United, of 100 limbs" : "Not yet united, of 100 limbs",
        "Months since the first operation",
        List.of(
            curve("Bone transport", false, 0.07, 46),
            curve("Induced membrane", false, 0.11, 41),
            curve("Bone transport over a nail, lengthening", false, 0.09, 22),
            curve("All series", true, 0.085, 109)),
        List.of("Groups differ in more than the method: compare within studies only."),
        new FigureProvenance(
            SeriesCount.of(3),
            "109 limbs",
            "random effects by interval",
            "demo",
            Optional.empty(),
            true));
  }
}
