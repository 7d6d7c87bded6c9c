package gapwise.exchange;

import gapwise.evidence.Provenance;
import gapwise.evidence.PublishedCurve;
import gapwise.evidence.PublishedCurve.AtRisk;
import gapwise.evidence.PublishedCurve.LastSeen;
import gapwise.evidence.PublishedCurve.Point;
import gapwise.evidence.Reading;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.CurveShows;
import gapwise.evidence.vocabulary.Missing;
import gapwise.evidence.vocabulary.Outcome;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/** One curve while its rows are read. */
final class CurveDraft {
  /** Columns that hold for the curve as a whole, of which a row may say why they are empty. */
  private static final Set<String> OF_WHOLE =
      Set.of("patients", "events", "median", "marks", "place", "words", "note");

  /** What one row says, and where. */
  private record Said(int row, Object value) {}

  private final String arm;
  private final Outcome outcome;
  private final int firstRow;
  private final Map<String, Said> whole = new HashMap<>();
  private final Map<String, Integer> filled = new HashMap<>();
  private final List<Point> points = new ArrayList<>();
  private final Map<Double, Said> atRisk = new HashMap<>();
  private final Map<Double, Said> lastSeen = new HashMap<>();
  private final Set<String> places = new LinkedHashSet<>();
  private final Set<String> words = new LinkedHashSet<>();
  private final Set<String> notes = new LinkedHashSet<>();
  private final List<Reading> readings = new ArrayList<>();
  private final SortedMap<String, Missing> missing = new TreeMap<>();

  CurveDraft(String arm, Outcome outcome, int firstRow) {
    this.arm = arm;
    this.outcome = outcome;
    this.firstRow = firstRow;
  }

  String arm() {
    return arm;
  }

  int firstRow() {
    return firstRow;
  }

  boolean hasPoints() {
    return !points.isEmpty();
  }

  int row(String field) {
    return filled.getOrDefault(field, firstRow);
  }

  void take(RowReader row) {
    OptionalDouble time = row.number(CurveSheet.TIME);
    same(row, CurveSheet.UNIT);
    same(row, CurveSheet.SHOWS);
    OptionalDouble share = row.number(CurveSheet.SHARE);
    Optional<Integer> risk = row.get(CurveSheet.AT_RISK);
    Optional<Integer> seen = row.get(CurveSheet.LAST_SEEN);
    boolean ofWhole = same(row, CurveSheet.PATIENTS);
    ofWhole |= same(row, CurveSheet.EVENTS);
    ofWhole |= same(row, CurveSheet.MEDIAN);
    ofWhole |= marks(row);
    provenance(row);
    if (row.isSound() && share.isEmpty() && risk.isEmpty() && seen.isEmpty() && !ofWhole) {
      row.refuse(
          CurveSheet.SHARE,
          "curve-row-empty",
          "The row has a time and neither a share nor a number at risk nor strokes. Fill one of them"
              + " in, or delete the row.");
    }
    if (time.isPresent()) {
      share.ifPresent(value -> point(row, time.getAsDouble(), value));
      risk.ifPresent(count -> atRisk(row, time.getAsDouble(), count));
      seen.ifPresent(count -> lastSeen(row, time.getAsDouble(), count));
    }
    row.missing().entrySet().stream()
        .filter(reason -> OF_WHOLE.contains(reason.getKey()))
        .forEach(reason -> missing.putIfAbsent(reason.getKey(), reason.getValue()));
  }

  private void point(RowReader row, double time, double share) {
    if (points.size() == PublishedCurve.MOST_POINTS) {
      row.refuse(
          CurveSheet.SHARE,
          "too-many-points",
          String.format(
              Locale.ROOT,
              "The curve has more than %,d points. Keep the corners, where the curve changes.",
              PublishedCurve.MOST_POINTS));
    } else {
      filled.putIfAbsent(CurveSheet.SHARE.name(), row.number());
      points.add(new Point(time, share));
    }
  }

  private void atRisk(RowReader row, double time, int count) {
    filled.putIfAbsent(CurveSheet.AT_RISK.name(), row.number());
    Said before = atRisk.putIfAbsent(time, new Said(row.number(), count));
    if (before != null && !before.value().equals(count)) {
      contradiction(row, CurveSheet.AT_RISK, before);
    }
  }

  private void lastSeen(RowReader row, double time, int count) {
    filled.putIfAbsent(CurveSheet.LAST_SEEN.name(), row.number());
    Said before = lastSeen.putIfAbsent(time, new Said(row.number(), count));
    if (before != null) {
      row.refuse(
          CurveSheet.LAST_SEEN,
          "strokes-twice",
          "Strokes at this time are counted in row "
              + before.row()
              + " already. Write all strokes of one time into one row.");
    }
  }

  /** Whether the column is filled; a value other than that of an earlier row is refused. */
  private boolean same(RowReader row, Field<?> field) {
    Optional<?> value = row.get(field);
    value.ifPresent(
        said -> {
          Said before = whole.putIfAbsent(field.name(), new Said(row.number(), said));
          filled.putIfAbsent(field.name(), row.number());
          if (before != null && !before.value().equals(said)) {
            contradiction(row, field, before);
          }
        });
    return value.isPresent();
  }

  private boolean marks(RowReader row) {
    Optional<String> text = row.get(CurveSheet.MARKS);
    if (text.filter(marks -> marks.length() > PublishedCurve.MOST_MARKS).isPresent()) {
      row.refuse(
          CurveSheet.MARKS,
          "text-too-long",
          String.format(
              Locale.ROOT,
              "Found %,d letters, and marks have at most %,d. Clear the cell; the points stand"
                  + " without it.",
              text.get().length(),
              PublishedCurve.MOST_MARKS));
      return true;
    }
    return same(row, CurveSheet.MARKS);
  }

  private static void contradiction(RowReader row, Field<?> field, Said before) {
    String other = before.value().toString();
    row.refuse(
        field,
        "curve-contradicts-itself",
        "Found '"
            + row.shown(field)
            + "', but row "
            + before.row()
            + " of the same curve says "
            + (other.length() <= 40 ? "'" + shown(before.value()) + "'" : "something else")
            + ". A curve has one of them; correct one row or clear it.");
  }

  private static String shown(Object value) {
    if (value instanceof Unit unit) {
      return unit.symbol();
    }
    return value instanceof CurveShows shows ? shows.code() : value.toString();
  }

  private void provenance(RowReader row) {
    Provenance found = ProvenanceFields.read(row);
    found.place().ifPresent(places::add);
    found.words().ifPresent(words::add);
    readings.addAll(found.readings());
    row.get(ProvenanceFields.NOTE).ifPresent(notes::add);
  }

  private static Optional<String> joined(Set<String> texts) {
    return texts.isEmpty() ? Optional.empty() : Optional.of(String.join("; ", texts));
  }

  /** The curve out of its rows, which are sound. */
  PublishedCurve build() {
    Optional<String> place = joined(places);
    Optional<String> printed = joined(words);
    Optional<String> note = joined(notes);
    missing.keySet().removeAll(whole.keySet());
    place.ifPresent(text -> missing.remove("place"));
    printed.ifPresent(text -> missing.remove("words"));
    note.ifPresent(text -> missing.remove("note"));
    List<AtRisk> risk = new ArrayList<>();
    atRisk.forEach((time, said) -> risk.add(new AtRisk(time, (Integer) said.value())));
    List<LastSeen> seen = new ArrayList<>();
    lastSeen.forEach((time, said) -> seen.add(new LastSeen(time, (Integer) said.value())));
    return new PublishedCurve(
        arm,
        outcome,
        of(CurveSheet.UNIT, Unit.class).orElseThrow(),
        of(CurveSheet.SHOWS, CurveShows.class).orElseThrow(),
        points,
        risk,
        seen,
        new PublishedCurve.Totals(
            of(CurveSheet.PATIENTS, Integer.class).map(OptionalInt::of).orElse(OptionalInt.empty()),
            of(CurveSheet.EVENTS, Integer.class).map(OptionalInt::of).orElse(OptionalInt.empty()),
            of(CurveSheet.MEDIAN, Double.class)
                .map(OptionalDouble::of)
                .orElse(OptionalDouble.empty())),
        of(CurveSheet.MARKS, String.class),
        new Provenance(place, printed, readings),
        missing,
        note);
  }

  private <T> Optional<T> of(Field<?> field, Class<T> kind) {
    return Optional.ofNullable(whole.get(field.name())).map(Said::value).map(kind::cast);
  }
}
