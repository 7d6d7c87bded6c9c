package gapwise.exchange;

import gapwise.evidence.ReportedValue;
import gapwise.exchange.form.LimitedForm;
import gapwise.exchange.form.NumberForm;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The columns of an effect that a paper reports without the numbers of its arms. */
final class EffectFields {
  private final Field<String> kind =
      Field.text(
              "effect_kind",
              "Effect: kind",
              "Odds ratio, mean difference and so on, as reported; for arm_id against against_arm.")
          .like("odds ratio");
  private final Field<Double> estimate =
      Field.number("effect_estimate", "Effect: estimate", "As printed.");
  private final Field<Double> lower =
      Field.number("effect_lower", "Effect: lower 95 % limit", "As printed.");
  private final Field<Double> upper =
      Field.number("effect_upper", "Effect: upper 95 % limit", "As printed.");
  private final Field<Double> p =
      Field.of(
          "effect_p",
          "Effect: p value",
          "As printed, 0 to 1.",
          LimitedForm.between(NumberForm.plain(), 0, 1, "a p value from 0 to 1 was expected"));
  private final Field<String> adjusted =
      Field.text(
          "effect_adjusted_for",
          "Effect: adjusted for",
          "What it was adjusted for; blank for a crude effect.");

  List<Field<?>> fields() {
    return List.of(kind, estimate, lower, upper, p, adjusted);
  }

  boolean isGiven(RowReader row) {
    return fields().stream().anyMatch(field -> row.get(field).isPresent());
  }

  Optional<ReportedValue> read(RowReader row) {
    Optional<String> named = row.get(kind);
    OptionalDouble value = row.number(estimate);
    OptionalDouble low = row.number(lower);
    OptionalDouble high = row.number(upper);
    OptionalDouble probability = row.number(p);
    Optional<String> covariates = row.get(adjusted);
    if (named.isEmpty() || value.isEmpty()) {
      row.refuse(
          named.isEmpty() ? kind : estimate,
          "incomplete-effect",
          "An effect needs its kind and its estimate. Where the paper gives a p value alone, write"
              + " its sentence into statement.");
      return Optional.empty();
    }
    row.requireOrder(lower, upper);
    return row.built(
        () ->
            new ReportedValue.Effect(
                named.get(), value.getAsDouble(), low, high, probability, covariates),
        fields().toArray(Field<?>[]::new));
  }

  void write(RowWriter row, ReportedValue.Effect effect) {
    row.put(kind, effect.kind());
    row.put(estimate, Double.valueOf(effect.estimate()));
    row.put(lower, effect.lower());
    row.put(upper, effect.upper());
    row.put(p, effect.pValue());
    row.put(adjusted, effect.adjustedFor());
  }
}
