package gapwise.evidence.check;

import gapwise.evidence.QuantitySummary;
import gapwise.evidence.rule.Findings;
import gapwise.evidence.rule.Group;
import gapwise.evidence.rule.GroupRule;
import gapwise.evidence.rule.Printed;
import gapwise.evidence.unit.Unit;
import java.util.OptionalDouble;

/**
 * Ages that cannot be, and those of children or the old, whose bones heal otherwise (common
 * practice, no source).
 */
final class AgeLimits implements GroupRule {
  private static final double OLDEST = 110;
  private static final double OLD = 85;

  @Override
  public void check(Group group, Findings findings) {
    if (group.baseline().age().isEmpty()) {
      return;
    }
    QuantitySummary years = group.baseline().age().get().in(Unit.YEARS);
    NegativeQuantity.numbers(years)
        .forEach(
            (column, value) -> {
              if (value.isPresent() && value.getAsDouble() > OLDEST) {
                findings.impossible(
                    group.part("age_" + column),
                    "age-impossible",
                    "An age of "
                        + Printed.number(value.getAsDouble())
                        + " years cannot be. Check the number and its unit.");
              }
            });
    doubt(group, "age_mean", years.mean(), 16, 70, findings);
    doubt(group, "age_median", years.median(), 16, 70, findings);
    doubt(group, "age_max", years.maximum(), 0, OLD, findings);
  }

  private static void doubt(
      Group group, String field, OptionalDouble age, double least, double most, Findings findings) {
    if (age.isPresent()
        && age.getAsDouble() <= OLDEST
        && (age.getAsDouble() < least || age.getAsDouble() > most)) {
      findings.doubtful(
          group.part(field),
          "age-unusual",
          "An age of "
              + Printed.number(age.getAsDouble())
              + " years is unusual in such studies. Check it, and whether children or the old are"
              + " reported apart.");
    }
  }
}
