package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.moderators.RegressionResult;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.bubble.Bubble;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** What a line or curve over the length of missing bone says, in sentences. */
record LengthWords(
    Outcome outcome, Quantity measure, List<Bubble.At> curve, RegressionResult regression) {
  /** Above this p value the data do not rule out that length makes no difference. */
  private static final double RULED_OUT_BELOW = 0.05;

  List<String> sentences(LengthShape shape) {
    List<Bubble.At> inside = curve.stream().filter(at -> !at.beyondData()).toList();
    if (inside.size() < 2) {
      return List.of();
    }
    Bubble.At first = inside.get(0);
    Bubble.At last = inside.get(inside.size() - 1);
    List<String> sentences = new ArrayList<>();
    if (shape == LengthShape.LINE) {
      sentences.add(slope(first, last) + " " + noChange(shape));
    } else {
      sentences.add(noChange(shape));
    }
    sentences.add(ends(inside, shape));
    return List.copyOf(sentences);
  }

  /** "Final union falls by about 3 of 100 for each further cm." */
  private String slope(Bubble.At first, Bubble.At last) {
    double change =
        (last.value() - first.value()) / (last.lengthCentimetres() - first.lengthCentimetres());
    String size = size(Math.abs(change));
    if (size.isEmpty()) {
      return say("answer.length-hardly-matters", Map.of("outcome", label()));
    }
    return say(
        change < 0 ? "answer.length-falls" : "answer.length-rises",
        Map.of("outcome", label(), "change", size));
  }

  /** A label with an aside of its own is closed by a comma. */
  private String label() {
    return outcome.label() + (outcome.label().contains(", ") ? "," : "");
  }

  /** The size of a change; empty where it shows as 0. */
  private String size(double change) {
    if (measure.kind() == Quantity.Kind.OF_100) {
      double of100 = change * 100;
      if (of100 < 0.5) {
        return of100 < 0.05 ? "" : say("answer.change-under-one");
      }
      return about(Told.withUnit(measure, String.valueOf(Math.round(of100))));
    }
    String shown = Shown.value(measure, change);
    return shown.equals(Shown.value(measure, 0)) ? "" : about(Told.withUnit(measure, shown));
  }

  private static String about(String change) {
    return say("answer.change-about", Map.of("change", change));
  }

  private String noChange(LengthShape shape) {
    OptionalDouble p =
        regression
            .moderatorTest()
            .map(test -> OptionalDouble.of(test.pValue()))
            .orElse(OptionalDouble.empty());
    if (p.isEmpty()) {
      return say("answer.length-chance-open");
    }
    if (p.getAsDouble() < RULED_OUT_BELOW) {
      return say("answer.length-beyond-chance");
    }
    return say(
        shape == LengthShape.CURVE
            ? "answer.length-no-difference-possible"
            : "answer.length-no-change-possible");
  }

  private String ends(List<Bubble.At> inside, LengthShape shape) {
    String first = told(inside.get(0));
    String last = told(inside.get(inside.size() - 1));
    return shape == LengthShape.CURVE
        ? say(
            "answer.length-three-values",
            Map.of("first", first, "middle", told(inside.get(inside.size() / 2)), "last", last))
        : say("answer.length-two-values", Map.of("first", first, "last", last));
  }

  private String told(Bubble.At at) {
    return say(
        "answer.value-at-length",
        Map.of(
            "value", Told.withUnit(measure, Shown.value(measure, at.value())),
            "limits", Shown.limits(measure, at.interval()),
            "length", Shown.centimetres(at.lengthCentimetres())));
  }
}
