package gapwise.exchange;

import gapwise.evidence.PublishedCurve;
import gapwise.evidence.vocabulary.Outcome;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The curves of one study while the rows of the sheet curves are read, in whatever order. */
final class CurveDrafts {
  private record Key(String arm, Outcome outcome) {}

  private final Map<Key, CurveDraft> curves = new LinkedHashMap<>();
  private final List<Integer> unread = new ArrayList<>();

  /** Keeps one row; what contradicts an earlier row of the same curve is told at this one. */
  void take(RowReader row) {
    Optional<String> arm = row.get(Keys.ARM);
    Optional<Outcome> outcome = row.get(CurveSheet.OUTCOME);
    if (arm.filter(Keys.ALL::equals).isPresent()) {
      row.refuse(
          Keys.ARM,
          "curve-of-all-arms",
          "A curve is of one arm. Name the arm, or leave the curve out where the figure shows all"
              + " groups together.");
    }
    CurveDraft curve =
        arm.filter(id -> !id.equals(Keys.ALL)).isPresent() && outcome.isPresent()
            ? curves.computeIfAbsent(
                new Key(arm.get(), outcome.get()),
                key -> new CurveDraft(key.arm(), key.outcome(), row.number()))
            : new CurveDraft(arm.orElse("unknown"), Outcome.of("time-to-union"), row.number());
    curve.take(row);
    if (!row.isSound()) {
      unread.add(row.number());
    }
  }

  boolean isSound() {
    return unread.isEmpty();
  }

  /** Where the sheet speaks of the study: the first row of each curve, and rows not read. */
  List<Integer> rows() {
    List<Integer> rows = new ArrayList<>(unread);
    curves.values().stream()
        .map(CurveDraft::firstRow)
        .filter(row -> !unread.contains(row))
        .forEach(rows::add);
    return rows;
  }

  /** Each curve at its first row, with the arm that it names. */
  List<StudyDraft.Placed<PublishedCurve>> placed() {
    return curves.values().stream()
        .map(
            curve ->
                new StudyDraft.Placed<PublishedCurve>(
                    curve.firstRow(), List.of(curve.arm()), Optional.empty()))
        .toList();
  }

  /** The first rows of curves that have numbers but no point. */
  List<Integer> withoutPoints() {
    return curves.values().stream()
        .filter(curve -> !curve.hasPoints())
        .map(CurveDraft::firstRow)
        .toList();
  }

  /** The row of a curve in which a column was first filled, or its first. */
  int row(int index, String field) {
    return List.copyOf(curves.values()).get(index).row(field);
  }

  /** The curves out of their rows, which are sound. */
  List<PublishedCurve> build() {
    return curves.values().stream().map(CurveDraft::build).toList();
  }
}
