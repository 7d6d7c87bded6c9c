package gapwise.decision.option;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.vocabulary.Method;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Map;

/** A difference between two methods in words of its outcome. */
public final class Differing {
  private static final double HUNDRED = 100;

  /** Nobody names a difference more finely; sums of fractions are off much further behind. */
  private static final int DECIMALS_CHOSEN = 6;

  private Differing() {}

  /** How probable a difference is that matters, in a sentence. */
  public static String chances(Column column, Method first, Method second, Chances chances) {
    return say(
        "decision.chances",
        Map.of(
            "first", first.shortLabel(),
            "second", second.shortLabel(),
            "matters", mattering(column, chances.matters()),
            "firstMore", Shown.of100(chances.firstMore()),
            "secondMore", Shown.of100(chances.secondMore()),
            "within", Shown.of100(chances.within())));
  }

  /** A difference that would matter: "10 of 100", "2 months"; a person chose it, so as chosen. */
  public static String mattering(Column column, double difference) {
    return column.measure().kind() == Quantity.Kind.OF_100
        ? say("certainty.of-hundred", Map.of("number", chosen(HUNDRED * difference)))
        : say(
            "certainty.in-unit",
            Map.of("number", chosen(difference), "unit", column.measure().unit()));
  }

  /** Without what arithmetic adds to it far behind the point. */
  private static String chosen(double number) {
    return BigDecimal.valueOf(number)
        .setScale(DECIMALS_CHOSEN, RoundingMode.HALF_UP)
        .stripTrailingZeros()
        .toPlainString();
  }

  /** "-3 to +21 of 100", "-2.1 to +0.4 months". */
  static String limits(Column column, Estimate difference) {
    Quantity measure = measure(column);
    return withUnit(measure, Shown.limits(measure, difference.limits()));
  }

  /** "+9 of 100 (-3 to +21)". */
  public static String words(Column column, Estimate difference) {
    Quantity measure = measure(column);
    return say(
        "decision.difference",
        Map.of(
            "value",
            withUnit(measure, Shown.value(measure, difference.value())),
            "limits",
            Shown.limits(measure, difference.limits())));
  }

  private static Quantity measure(Column column) {
    return column.measure().kind() == Quantity.Kind.OF_100
        ? Quantity.differenceOf100()
        : Quantity.difference(column.measure().unit());
  }

  private static String withUnit(Quantity measure, String number) {
    return measure.kind() == Quantity.Kind.DIFFERENCE_OF_100
        ? say("certainty.of-hundred", Map.of("number", number))
        : measure.unit().isEmpty()
            ? number
            : say("certainty.in-unit", Map.of("number", number, "unit", measure.unit()));
  }
}
