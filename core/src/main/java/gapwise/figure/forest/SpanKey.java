package gapwise.figure.forest;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.span.Span;
import gapwise.figure.span.SpanRule;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
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
      below.add(say("figure.ruled-range"));
    }
    if (kinds.contains(SpanRule.Kind.QUARTILES)) {
      below.add(say("figure.ruled-half"));
    }
    if (kinds.contains(SpanRule.Kind.STANDARD_DEVIATION)) {
      below.add(say("figure.ruled-deviation"));
    }
    if (patients) {
      below.add(say("figure.ruled-patients"));
    }
    List<String> words = new ArrayList<>(List.of(say("figure.bone-ends")));
    if (!below.isEmpty()) {
      words.add(say("figure.below-bone", Map.of("rules", String.join(", ", below))));
    }
    boolean open =
        spans.stream().anyMatch(s -> s instanceof Span.Threshold || s instanceof Span.RangeOnly);
    if (open) {
      words.add(say("figure.open-end"));
    }
    return String.join(" ", words);
  }
}
