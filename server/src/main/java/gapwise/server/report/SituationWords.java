package gapwise.server.report;

import static gapwise.sentence.Sentences.say;

import gapwise.decision.situation.Situation;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.figure.value.Shown;
import gapwise.wording.Segments;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** A situation in words. */
public final class SituationWords {
  private SituationWords() {}

  /** "6 cm of bone missing, tibia, distal tibia, infected". */
  public static String title(Situation situation) {
    List<String> parts = new ArrayList<>();
    parts.add(
        situation.defect().map(SituationWords::length).orElseGet(() -> say("decision.any-length")));
    if (!situation.segments().isEmpty()) {
      parts.add(
          situation.segments().stream()
              .sorted()
              .map(Segments::name)
              .collect(Collectors.joining(", ")));
    } else if (!situation.bones().isEmpty()) {
      parts.add(
          situation.bones().stream().sorted().map(Bone::label).collect(Collectors.joining(", ")));
    }
    infection(situation.infected()).ifPresent(parts::add);
    return say("decision.title", Map.of("situation", String.join(", ", parts)));
  }

  private static Optional<String> infection(Optional<YesOrNo> infected) {
    return infected.map(
        answer ->
            switch (answer) {
              case YES -> say("decision.infected");
              case NO -> say("decision.not-infected");
              default -> say("decision.infection-open");
            });
  }

  private static String length(LengthRange range) {
    String from = Shown.centimetres(range.fromCentimetres());
    if (Double.isInfinite(range.toCentimetres())) {
      return say("decision.length-from", Map.of("from", from));
    }
    String to = Shown.centimetres(range.toCentimetres());
    return from.equals(to)
        ? say("decision.length", Map.of("length", from))
        : say("decision.lengths", Map.of("from", from, "to", to));
  }
}
