package gapwise.decision.choice;

import static gapwise.sentence.Sentences.say;

import gapwise.decision.option.Column;
import gapwise.decision.weighing.Criterion;
import gapwise.decision.weighing.Weighed;
import gapwise.decision.weighing.Wishes;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Wishes, weights and outcomes in words that a patient understands. */
public final class WishWords {
  private static final double HUNDRED = 100;

  /** Parts of 100 that differ by less are the same, which fractions are not to the last digit. */
  private static final double WHOLE = 1e-6;

  private WishWords() {}

  /** "a fifth of the decision", "12 of 100 parts of the decision". */
  public static String part(double weight) {
    double parts = HUNDRED * weight;
    int percent = (int) Math.round(parts);
    return switch (Math.abs(parts - percent) < 0.5 ? percent : 0) {
      case 10 -> say("choice.part-tenth");
      case 20 -> say("choice.part-fifth");
      case 25 -> say("choice.part-quarter");
      case 33 -> say("choice.part-third");
      case 50 -> say("choice.part-half");
      case 67 -> say("choice.part-two-thirds");
      case 75 -> say("choice.part-three-quarters");
      default ->
          say(
              "choice.part",
              Map.of(
                  "parts",
                  Math.abs(parts - percent) < WHOLE
                      ? Integer.toString(percent)
                      : Shown.number(parts)));
    };
  }

  /** What was said of the weights, a phrase each; that nothing was said where it was not. */
  public static List<String> wishes(Weighed weighed) {
    Wishes wishes = weighed.wishes();
    List<String> said = new ArrayList<>();
    if (wishes.order().size() > 1) {
      said.add(
          say(
              "choice.in-order",
              Map.of(
                  "order",
                  wishes.order().stream()
                      .map(code -> label(weighed, code))
                      .collect(Collectors.joining(", ")))));
    }
    for (Criterion each : weighed.criteria()) {
      Optional.ofNullable(wishes.atLeast().get(each.code()))
          .map(least -> say("choice.at-least", limit(each, least)))
          .ifPresent(said::add);
      Optional.ofNullable(wishes.atMost().get(each.code()))
          .map(most -> say("choice.at-most", limit(each, most)))
          .ifPresent(said::add);
    }
    return said.isEmpty() ? List.of(say("choice.no-wish")) : said;
  }

  private static Map<String, String> limit(Criterion criterion, double weight) {
    return Map.of("outcome", criterion.label(), "part", part(weight));
  }

  private static String label(Weighed weighed, String code) {
    return weighed.criteria().stream()
        .filter(each -> each.code().equals(code))
        .findFirst()
        .orElseThrow()
        .label();
  }

  /** Weights in words, "Bone joined 45, Infection afterwards 30". */
  public static String weights(Weighed weighed, List<Double> weights) {
    List<String> parts = new ArrayList<>();
    for (int c = 0; c < weights.size(); c++) {
      parts.add(
          say(
              "choice.weight",
              Map.of(
                  "outcome",
                  weighed.criteria().get(c).label(),
                  "weight",
                  Shown.of100(Math.min(1, weights.get(c))))));
    }
    return String.join(", ", parts);
  }

  /** A number that people read, with its unit: "85 of 100", "9.3 months". */
  public static String number(Column column, double shown) {
    Quantity measure = column.measure();
    if (measure.kind() == Quantity.Kind.OF_100) {
      return say(
          "certainty.of-hundred",
          Map.of("number", Shown.of100(Math.max(0, Math.min(1, shown / HUNDRED)))));
    }
    return say(
        "certainty.in-unit",
        Map.of("number", Shown.reported(measure, shown), "unit", measure.unit()));
  }

  /** The ranges that weights speak of, one after another. */
  static String ranges(WeighedMethods methods) {
    List<String> ranges = new ArrayList<>();
    for (int c = 0; c < methods.columns().size(); c++) {
      Column column = methods.columns().get(c);
      Criterion criterion = methods.weighed().criteria().get(c);
      ranges.add(
          say(
              "choice.range",
              Map.of(
                  "outcome",
                  criterion.label(),
                  "worst",
                  number(column, criterion.worst()),
                  "best",
                  number(column, criterion.best()))));
    }
    return String.join(", ", ranges);
  }
}
