package gapwise.evidence.check;

import gapwise.evidence.rule.CurveAt;
import gapwise.evidence.rule.CurveRule;
import gapwise.evidence.rule.Findings;
import java.util.OptionalInt;

/** A curve of more patients than its arm has patients, limbs or defects. */
final class CurveWithinArm implements CurveRule {
  @Override
  public void check(CurveAt at, Findings findings) {
    OptionalInt size = at.group().largestSize();
    int most = at.curve().totals().patients().orElse(0);
    String field = "patients";
    if (!at.curve().atRisk().isEmpty() && at.curve().atRisk().get(0).patients() > most) {
      most = at.curve().atRisk().get(0).patients();
      field = "at_risk";
    }
    if (size.isPresent() && most > size.getAsInt()) {
      findings.doubtful(
          at.part(field),
          "curve-above-arm",
          "The curve is of "
              + most
              + " patients, but the arm has "
              + size.getAsInt()
              + ". Check both, and give the arm's limbs or defects if the curve counts those.");
    }
  }
}
