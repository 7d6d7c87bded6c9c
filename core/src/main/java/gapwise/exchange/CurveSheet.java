package gapwise.exchange;

import gapwise.evidence.Provenance;
import gapwise.evidence.PublishedCurve;
import gapwise.evidence.PublishedCurve.AtRisk;
import gapwise.evidence.PublishedCurve.LastSeen;
import gapwise.evidence.PublishedCurve.Point;
import gapwise.evidence.Reading;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.CurveShows;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.exchange.form.CodeForm;
import gapwise.exchange.form.LimitedForm;
import gapwise.exchange.form.NumberForm;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The sheet of published curves of times to an event: one row for each point, number at risk or
 * stroke. Rows of one study, arm and outcome are one curve, in whatever order they stand.
 */
final class CurveSheet {
  static final Field<Outcome> OUTCOME =
      Field.of("outcome", "Outcome", "The time to an event that the figure shows.", times())
          .asRequired()
          .like("time-to-union");
  static final Field<Double> TIME =
      Field.amount("time", "Time", "Time of the point, the number at risk or the strokes.")
          .in("as in time_unit")
          .asRequired();
  static final Field<Unit> UNIT =
      Field.of(
              "time_unit",
              "Unit of time",
              "Unit of the axis of time, the same in every row of a curve.",
              CodeForm.units(Unit.Dimension.TIME))
          .asRequired()
          .like("months");
  static final Field<CurveShows> SHOWS =
      Field.of(
              "shows",
              "Shows the share",
              "Whether the figure shows the share of patients with the event, which rises, or"
                  + " without it, which falls; the same in every row of a curve.",
              CodeForm.of(CurveShows.class))
          .asRequired()
          .like("with-event");
  static final Field<Double> SHARE =
      Field.of(
              "share",
              "Share",
              "Share of the patients at this time, as the figure shows it.",
              LimitedForm.between(
                  NumberForm.plain(), 0, 100, "a percentage from 0 to 100 was expected"))
          .in("%");
  static final Field<Integer> AT_RISK =
      Field.count(
          "at_risk",
          "At risk",
          "Patients still followed without the event at this time, as printed under the figure.");
  static final Field<Integer> LAST_SEEN =
      Field.several(
          "last_seen",
          "Last seen",
          "Strokes on the curve at this time, each a patient last seen without the event.");
  static final Field<Integer> PATIENTS =
      Field.several(
          "patients",
          "Patients",
          "Patients at the start of the curve. One row of a curve is enough.");
  static final Field<Integer> EVENTS =
      Field.count("events", "Events", "Events in all, as printed. One row of a curve is enough.");
  static final Field<Double> MEDIAN =
      Field.amount(
              "median",
              "Median",
              "Median time to the event, as printed. One row of a curve is enough.")
          .in("as in time_unit");
  static final Field<String> MARKS =
      Field.text(
          "marks",
          "Marks on the picture",
          "Written by the program: what a person marked on the figure. Leave it as it is. It stands"
              + " in one row of a curve.");

  static final Sheet SHEET =
      new Sheet(
          "curves",
          "One row for each point of a curve that a figure shows of a time to an event, or number at"
              + " risk under it. Rows of the same study, arm and outcome are one curve.",
          fields());

  private CurveSheet() {}

  private static CodeForm<Outcome> times() {
    CodeForm<Outcome> all = CodeForm.of(Outcome.vocabulary());
    List<String> offered =
        Outcome.vocabulary().all().stream()
            .filter(outcome -> outcome.kind() == Outcome.Kind.TIME)
            .map(Coded::code)
            .toList();
    // Others are read too, so that a rule can say what is wrong with them.
    return new CodeForm<>(offered, all.parse(), all.word());
  }

  private static List<Field<?>> fields() {
    List<Field<?>> fields = new ArrayList<>(List.of(Keys.STUDY, Keys.ARM, OUTCOME, TIME, UNIT));
    fields.addAll(List.of(SHOWS, SHARE, AT_RISK, LAST_SEEN, PATIENTS, EVENTS, MEDIAN, MARKS));
    fields.addAll(ProvenanceFields.fields());
    return fields;
  }

  static List<RowWriter> write(Study study) {
    return study.curves().stream().flatMap(curve -> write(study.id(), curve).stream()).toList();
  }

  private static List<RowWriter> write(String study, PublishedCurve curve) {
    // Rows by time; where points share one time, what else belongs to it stands beside the first.
    Map<Double, List<RowWriter>> byTime = new TreeMap<>();
    for (Point point : curve.points()) {
      RowWriter row = started(study, curve, point.time());
      row.put(SHARE, Double.valueOf(point.share()));
      byTime.computeIfAbsent(point.time(), time -> new ArrayList<>()).add(row);
    }
    for (AtRisk mark : curve.atRisk()) {
      at(byTime, study, curve, mark.time()).put(AT_RISK, Integer.valueOf(mark.patients()));
    }
    for (LastSeen seen : curve.lastSeen()) {
      at(byTime, study, curve, seen.time()).put(LAST_SEEN, Integer.valueOf(seen.patients()));
    }
    List<RowWriter> rows = byTime.values().stream().flatMap(List::stream).toList();
    RowWriter first = rows.get(0);
    first.put(PATIENTS, curve.totals().patients());
    first.put(EVENTS, curve.totals().events());
    first.put(MEDIAN, curve.totals().median());
    first.put(MARKS, curve.marks());
    Provenance all = curve.provenance();
    ProvenanceFields.write(first, new Provenance(all.place(), all.words()), curve.note());
    readings(rows, all.readings());
    first.missing(curve.missing());
    return rows;
  }

  /** One reading of each column to a row, as the desk keeps them; what is over to the last row. */
  private static void readings(List<RowWriter> rows, List<Reading> readings) {
    Map<String, Integer> next = new HashMap<>();
    Map<Integer, List<Reading>> byRow = new TreeMap<>();
    for (Reading reading : readings) {
      int row = Math.min(next.merge(reading.column(), 1, Integer::sum), rows.size()) - 1;
      byRow.computeIfAbsent(row, at -> new ArrayList<>()).add(reading);
    }
    byRow.forEach((row, own) -> rows.get(row).put(ProvenanceFields.READINGS, own));
  }

  private static RowWriter at(
      Map<Double, List<RowWriter>> byTime, String study, PublishedCurve curve, double time) {
    return byTime
        .computeIfAbsent(time, at -> new ArrayList<>(List.of(started(study, curve, at))))
        .get(0);
  }

  private static RowWriter started(String study, PublishedCurve curve, double time) {
    RowWriter row = new RowWriter(SHEET);
    row.put(Keys.STUDY, study);
    row.put(Keys.ARM, curve.arm());
    row.put(OUTCOME, curve.outcome());
    row.put(TIME, Double.valueOf(time));
    row.put(UNIT, curve.unit());
    row.put(SHOWS, curve.shows());
    return row;
  }
}
