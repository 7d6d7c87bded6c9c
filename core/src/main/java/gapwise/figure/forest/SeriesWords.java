package gapwise.figure.forest;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.value.Shown;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** A series in full words: what a pointer or a screen reader is told where names are shortened. */
final class SeriesWords {
  private SeriesWords() {}

  static String full(Forest forest, ForestRow row) {
    List<String> words = new ArrayList<>();
    words.add(row.study());
    if (!row.detail().isBlank()) {
      words.add(row.detail());
    }
    words.add(say("figure.missing-bone", Map.of("length", row.span().words())));
    if (!row.counts().isBlank()) {
      words.add(row.counts());
    }
    words.add(Shown.estimate(forest.measure(), row.estimate()));
    row.weightPercent()
        .ifPresent(w -> words.add(say("figure.weight", Map.of("percent", Shown.weightPercent(w)))));
    return String.join("; ", words);
  }
}
