package gapwise.figure.forest;

import gapwise.figure.span.Span;
import gapwise.figure.span.SpanRule;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** The sentence that explains the spans of a figure, naming only what occurs. */
final class SpanKey {
  private SpanKey() {}

  static String words(Forest forest) {
    List<Span> spans =
        Stream.concat(
                forest.rows().stream().map(ForestRow::span),
                forest.leftOut().stream().map(ForestLeftOut::span))
            .toList();
    List<String> below = new ArrayList<>();
    Set<SpanRule.Kind> kinds = EnumSet.noneOf(SpanRule.Kind.class);
    boolean patients = false;
    for (Span span : spans) {
      boolean each = span instanceof Span.PerPatient;
      patients |= each;
      if (!each) {
        span.rule().ifPresent(rule -> kinds.add(rule.kind()));
      }
    }
    if (kinds.contains(SpanRule.Kind.SHORTEST_TO_LONGEST)) {
      below.add("ruled shortest to longest");
    }
    if (kinds.contains(SpanRule.Kind.QUARTILES)) {
      below.add("thick the middle half");
    }
    if (kinds.contains(SpanRule.Kind.STANDARD_DEVIATION)) {
      below.add("dashed one SD to either side");
    }
    if (patients) {
      below.add("a tick for each patient");
    }
    String words =
        "Bone ends are drawn with the missing length between them (cm: mean, or median"
            + " where that was reported or patients are listed).";
    if (!below.isEmpty()) {
      words += " Below: " + String.join(", ", below) + ".";
    }
    boolean open =
        spans.stream().anyMatch(s -> s instanceof Span.Threshold || s instanceof Span.RangeOnly);
    return words + (open ? " A dashed or missing far end: no average was reported." : "");
  }
}
