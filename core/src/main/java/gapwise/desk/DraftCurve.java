package gapwise.desk;

import gapwise.evidence.Reading;
import gapwise.exchange.Template;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * A curve that stands in a draft.
 *
 * @param block its rows' block
 * @param rows at least one, in their order
 */
public record DraftCurve(int block, List<DraftRow> rows) {
  public DraftCurve {
    rows = List.copyOf(rows);
    if (rows.isEmpty()) {
      throw new IllegalArgumentException("a curve has a row");
    }
  }

  /** The draft's group. */
  public String arm() {
    return first(row -> row.text(Template.ARM));
  }

  /** Code of the time that it shows. */
  public String outcome() {
    return first(row -> row.text(Template.OUTCOME));
  }

  /** Symbol of the unit of its times; empty text for none. */
  public String timeUnit() {
    return first(row -> row.text(CurveIntoDraft.TIME_UNIT));
  }

  /** Whether it shows the share with the event. */
  public boolean withEvent() {
    return first(row -> row.text(CurveIntoDraft.SHOWS)).equals(CurveIntoDraft.WITH_EVENT);
  }

  /** Patients at the start; empty text where it was not said. */
  public String patients() {
    return first(row -> row.text(CurveIntoDraft.PATIENTS));
  }

  /** Events in all; empty text where it was not said. */
  public String events() {
    return first(row -> row.text(CurveIntoDraft.EVENTS));
  }

  /** Printed median; empty text where it was not said. */
  public String median() {
    return first(row -> row.text(CurveIntoDraft.MEDIAN));
  }

  /** What the paper calls the figure; empty text where it was not said. */
  public String place() {
    return first(row -> row.text(CurveIntoDraft.PLACE));
  }

  /** How many points it has. */
  public int points() {
    return with(CurveIntoDraft.SHARE).size();
  }

  /** Times and shares, as they stand in its rows. */
  public List<String> shares() {
    return lines(CurveIntoDraft.SHARE);
  }

  /** Times and numbers at risk, as they stand in its rows. */
  public List<String> atRisk() {
    return lines(CurveIntoDraft.AT_RISK);
  }

  /** Times at which patients were last seen, each as often as there were patients. */
  public List<String> lastSeen() {
    List<String> times = new ArrayList<>();
    for (DraftRow row : with(CurveIntoDraft.LAST_SEEN)) {
      String count = row.text(CurveIntoDraft.LAST_SEEN);
      int patients = count.matches("\\d{1,4}") ? Integer.parseInt(count) : 1;
      for (int i = 0; i < patients; i++) {
        times.add(row.text(CurveIntoDraft.TIME));
      }
    }
    return List.copyOf(times);
  }

  /** The marks on its picture; empty where it was not read off here. */
  public Optional<FigureMarks> marks() {
    return FigureMarks.ofJson(first(row -> row.text(CurveIntoDraft.MARKS)));
  }

  /** Where its figure stands; empty where that was not kept. */
  public Optional<Reading> reading() {
    return rows.stream().flatMap(row -> row.readings().values().stream()).findFirst();
  }

  private List<DraftRow> with(String column) {
    return rows.stream().filter(row -> !row.text(column).isEmpty()).toList();
  }

  private List<String> lines(String column) {
    return with(column).stream()
        .map(row -> row.text(CurveIntoDraft.TIME) + " " + row.text(column))
        .toList();
  }

  private String first(Function<DraftRow, String> cell) {
    return rows.stream().map(cell).filter(text -> !text.isEmpty()).findFirst().orElse("");
  }
}
