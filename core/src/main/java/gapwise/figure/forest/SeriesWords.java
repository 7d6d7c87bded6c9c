package gapwise.figure.forest;

import gapwise.figure.value.Shown;
import java.util.ArrayList;
import java.util.List;

/** A series in full words: what a pointer or a screen reader is told where names are shortened. */
final class SeriesWords {
  private SeriesWords() {}

  static String full(Forest forest, ForestRow row) {
    List<String> words = new ArrayList<>();
    words.add(row.study());
    if (!row.detail().isBlank()) {
      words.add(row.detail());
    }
    words.add("missing bone " + row.span().words());
    if (!row.counts().isBlank()) {
      words.add(row.counts());
    }
    words.add(Shown.estimate(forest.measure(), row.estimate()));
    row.weightPercent().ifPresent(w -> words.add("weight " + Shown.weightPercent(w) + " %"));
    return String.join("; ", words);
  }
}
