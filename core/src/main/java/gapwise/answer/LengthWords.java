package gapwise.answer;

import gapwise.analysis.moderators.RegressionResult;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.bubble.Bubble;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import java.util.ArrayList;
import java.util.List;
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
      return label() + " hardly changes with the length of missing bone.";
    }
    return label() + (change < 0 ? " falls by " : " rises by ") + size + " for each further cm.";
  }

  /** A label with an aside of its own is closed by a comma. */
  private String label() {
    return outcome.label() + (outcome.label().contains(", ") ? "," : "");
  }

  private String size(double change) {
    if (measure.kind() == Quantity.Kind.OF_100) {
      double of100 = change * 100;
      return of100 < 0.5
          ? (of100 < 0.05 ? "" : "less than 1 of 100")
          : "about " + Math.round(of100) + " of 100";
    }
    String shown = Shown.value(measure, change);
    return shown.matches("[0.]+") ? "" : ("about " + shown + " " + measure.unit()).strip();
  }

  private String noChange(LengthShape shape) {
    OptionalDouble p =
        regression
            .moderatorTest()
            .map(test -> OptionalDouble.of(test.pValue()))
            .orElse(OptionalDouble.empty());
    if (p.isEmpty()) {
      return "Whether that is more than chance cannot be told.";
    }
    String how = shape == LengthShape.CURVE ? "that length makes no difference" : "no change";
    return p.getAsDouble() < RULED_OUT_BELOW
        ? "Chance alone hardly explains it; other differences between the series may."
        : "The data do not rule out " + how + ".";
  }

  private String ends(List<Bubble.At> inside, LengthShape shape) {
    Bubble.At first = inside.get(0);
    Bubble.At last = inside.get(inside.size() - 1);
    Bubble.At middle = inside.get(inside.size() / 2);
    String between = shape == LengthShape.CURVE ? ", " + told(middle) : "";
    return "On average " + told(first) + between + " and " + told(last) + ".";
  }

  private String told(Bubble.At at) {
    String unit = measure.kind() == Quantity.Kind.OF_100 ? " of 100" : " " + measure.unit();
    return Shown.value(measure, at.value())
        + unit.stripTrailing()
        + " ("
        + Shown.limits(measure, at.interval())
        + ") where series have a mean of "
        + Shown.centimetres(at.lengthCentimetres())
        + " cm";
  }
}
