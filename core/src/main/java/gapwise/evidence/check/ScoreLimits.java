package gapwise.evidence.check;

import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.Printed;
import gapwise.evidence.rule.ReportAt;
import gapwise.evidence.rule.ReportRule;
import gapwise.evidence.unit.Unit;
import java.util.Map;

/** Scores beyond the ends of their scale, as the vocabulary's names give them. */
final class ScoreLimits implements ReportRule {
  private record Ends(double lowest, double highest) {}

  private static final Map<String, Ends> SCALES =
      Map.of(
          "lefs", new Ends(0, 80),
          "sf36-physical", new Ends(0, 100),
          "sf36-mental", new Ends(0, 100),
          "aofas", new Ends(0, 100),
          "sickness-impact-profile", new Ends(0, 100),
          "eq5d", new Ends(-1, 1),
          "pain", new Ends(0, 10),
          "satisfaction", new Ends(0, 100));

  @Override
  public void check(ReportAt at, Findings findings) {
    Ends ends = SCALES.get(at.code());
    if (ends == null || at.quantity().filter(s -> s.unit() == Unit.POINTS).isEmpty()) {
      return;
    }
    NegativeQuantity.numbers(at.quantity().orElseThrow())
        .forEach(
            (column, value) -> {
              if (value.isPresent()
                  && (value.getAsDouble() < ends.lowest()
                      || value.getAsDouble() > ends.highest())) {
                findings.impossible(
                    at.part(column),
                    "beyond-the-scale",
                    Printed.number(value.getAsDouble())
                        + " lies beyond '"
                        + at.report().outcome().label()
                        + "', which runs from "
                        + Printed.number(ends.lowest())
                        + " to "
                        + Printed.number(ends.highest())
                        + ". Check the number and which scale the paper used.");
              }
            });
  }
}
