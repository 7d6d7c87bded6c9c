package gapwise.evidence.check;

import gapwise.evidence.QuantitySummary;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.Printed;
import gapwise.evidence.rule.RecordPart;
import gapwise.evidence.rule.ReportAt;
import gapwise.evidence.rule.ReportRule;
import gapwise.evidence.unit.Unit;
import java.util.Optional;

/** Differences in leg length that cannot be or seldom are (common practice, no source). */
final class LegLengthLimits implements ReportRule {
  private static final double UNUSUAL = 5;
  private static final double IMPOSSIBLE = 20;

  @Override
  public void check(ReportAt at, Findings findings) {
    Optional<QuantitySummary> length =
        at.quantity()
            .filter(s -> at.code().equals("limb-length-discrepancy"))
            .filter(s -> s.unit().dimension() == Unit.Dimension.LENGTH);
    length.ifPresent(
        summary ->
            NegativeQuantity.numbers(summary.in(Unit.CENTIMETRES))
                .forEach(
                    (column, value) -> {
                      if (value.isPresent()) {
                        check(at.part(column), Math.abs(value.getAsDouble()), findings);
                      }
                    }));
  }

  private static void check(RecordPart part, double centimetres, Findings findings) {
    String found = "A difference in leg length of " + Printed.about(centimetres) + " cm ";
    if (centimetres > IMPOSSIBLE) {
      findings.impossible(
          part, "leg-length-impossible", found + "cannot be. Check the number and its unit.");
    } else if (centimetres > UNUSUAL) {
      findings.doubtful(
          part, "leg-length-unusual", found + "is unusual. Check the number and its unit.");
    }
  }
}
