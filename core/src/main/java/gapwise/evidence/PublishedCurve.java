package gapwise.evidence;

import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.CurveShows;
import gapwise.evidence.vocabulary.Missing;
import gapwise.evidence.vocabulary.Outcome;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * One published curve of one arm for one outcome, as it was read off a figure: how the share of the
 * patients with or without the event goes over time.
 *
 * @param arm id of the arm
 * @param outcome the time that it shows, such as time to union
 * @param unit of all its times
 * @param shows whether the figure shows the share with the event or without
 * @param points at least one, in order of time; several at one time where a step was traced
 * @param atRisk numbers at risk as printed under the figure, each time once, in order of time
 * @param lastSeen strokes on the curve where patients were last seen, each time once, in order
 * @param totals what the paper prints of the curve as a whole
 * @param marks what a person marked on the picture, JSON that only the page of marks understands
 * @param provenance place in the paper and words, its readings in the order of their columns
 * @param missing why template columns are empty, by column
 * @param note anything that the fields cannot say
 */
public record PublishedCurve(
    String arm,
    Outcome outcome,
    Unit unit,
    CurveShows shows,
    List<Point> points,
    List<AtRisk> atRisk,
    List<LastSeen> lastSeen,
    Totals totals,
    Optional<String> marks,
    Provenance provenance,
    SortedMap<String, Missing> missing,
    Optional<String> note) {
  /** Points of one curve; it has no more corners than patients had the event. Our choice. */
  public static final int MOST_POINTS = 1_000;

  /** Letters of the marks: they stand in one cell of a workbook, which holds 32,767. */
  public static final int MOST_MARKS = 30_000;

  /**
   * A place on the curve.
   *
   * @param time 0 or more
   * @param share of the patients in percent, 0 to 100, just after the time
   */
  public record Point(double time, double share) {
    public Point {
      requireTime(time);
      if (!(share >= 0 && share <= 100)) {
        throw new IllegalArgumentException("a share is 0 to 100 percent, was " + share);
      }
    }
  }

  /** So many patients still followed without the event at a time. */
  public record AtRisk(double time, int patients) {
    public AtRisk {
      requireTime(time);
      requireCount("patients at risk", patients, 0);
    }
  }

  /** So many strokes for patients last seen at a time without the event. */
  public record LastSeen(double time, int patients) {
    public LastSeen {
      requireTime(time);
      requireCount("patients last seen", patients, 1);
    }
  }

  /**
   * What is printed of the curve as a whole.
   *
   * @param patients at its start, at least 1
   * @param events in all
   * @param median time to the event, in the unit of the curve
   */
  public record Totals(OptionalInt patients, OptionalInt events, OptionalDouble median) {
    /** Nothing is printed. */
    public static final Totals NOTHING =
        new Totals(OptionalInt.empty(), OptionalInt.empty(), OptionalDouble.empty());

    public Totals {
      patients.ifPresent(count -> requireCount("patients", count, 1));
      events.ifPresent(count -> requireCount("events", count, 0));
      median.ifPresent(PublishedCurve::requireTime);
    }
  }

  public PublishedCurve {
    Ids.require("arm id", arm);
    Objects.requireNonNull(outcome, "outcome");
    Objects.requireNonNull(shows, "shows");
    Objects.requireNonNull(marks, "marks");
    provenance =
        new Provenance(
            provenance.place(),
            provenance.words(),
            inOrder(provenance.readings(), Comparator.comparing(Reading::column)));
    Objects.requireNonNull(note, "note");
    points = inOrder(points, Comparator.comparingDouble(Point::time));
    atRisk = inOrder(atRisk, Comparator.comparingDouble(AtRisk::time));
    lastSeen = inOrder(lastSeen, Comparator.comparingDouble(LastSeen::time));
    // What is empty is left out where records are stored.
    totals = Objects.requireNonNullElse(totals, Totals.NOTHING);
    missing = Collections.unmodifiableSortedMap(new TreeMap<>(missing));
    if (unit.dimension() != Unit.Dimension.TIME) {
      throw new IllegalArgumentException(unit.symbol() + " is not a unit of time");
    }
    if (points.isEmpty() || points.size() > MOST_POINTS) {
      throw new IllegalArgumentException(
          "a curve has 1 to " + MOST_POINTS + " points, had " + points.size());
    }
    if (marks.filter(text -> text.length() > MOST_MARKS).isPresent()) {
      throw new IllegalArgumentException("marks have at most " + MOST_MARKS + " letters");
    }
    requireOnce("number at risk", atRisk.stream().map(AtRisk::time).toList());
    requireOnce("stroke", lastSeen.stream().map(LastSeen::time).toList());
  }

  private static <T> List<T> inOrder(List<T> given, Comparator<T> order) {
    List<T> sorted = new ArrayList<>(given);
    sorted.sort(order);
    return List.copyOf(sorted);
  }

  private static void requireTime(double time) {
    if (!(time >= 0 && Double.isFinite(time))) {
      throw new IllegalArgumentException("a time must be 0 or more, was " + time);
    }
  }

  private static void requireCount(String what, int count, int least) {
    if (count < least) {
      throw new IllegalArgumentException(what + " must be at least " + least + ", was " + count);
    }
  }

  private static void requireOnce(String what, List<Double> times) {
    Set<Double> seen = new HashSet<>();
    for (double time : times) {
      if (!seen.add(time)) {
        throw new IllegalArgumentException("there are two of " + what + " at the time " + time);
      }
    }
  }

  /** Patients at the start: as printed, else the number at risk at time 0; empty if neither is. */
  public OptionalInt start() {
    if (totals.patients().isPresent() || atRisk.isEmpty() || atRisk.get(0).time() > 0) {
      return totals.patients();
    }
    return OptionalInt.of(atRisk.get(0).patients());
  }

  /** The percentage without the event where the curve was last read. */
  public double lastWithout() {
    return shows.without(points.get(points.size() - 1).share());
  }

  /**
   * The first time read at which at most a percentage is without the event, in the unit of the
   * curve; empty where the curve stays above.
   */
  public OptionalDouble timeOf(double without) {
    return points.stream()
        .filter(point -> shows.without(point.share()) <= without)
        .mapToDouble(Point::time)
        .findFirst();
  }

  /** The last time of which the curve says anything: a point, a number at risk or a stroke. */
  public double lastTime() {
    double last = points.get(points.size() - 1).time();
    for (AtRisk mark : atRisk) {
      last = mark.patients() > 0 ? Math.max(last, mark.time()) : last;
    }
    return lastSeen.isEmpty() ? last : Math.max(last, lastSeen.get(lastSeen.size() - 1).time());
  }
}
