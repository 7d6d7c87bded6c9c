package gapwise.demonstration;

import gapwise.evidence.Provenance;
import gapwise.evidence.PublishedCurve;
import gapwise.evidence.PublishedCurve.AtRisk;
import gapwise.evidence.PublishedCurve.LastSeen;
import gapwise.evidence.PublishedCurve.Point;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.CurveShows;
import gapwise.evidence.vocabulary.Outcome;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Figures of the share joined over time that some papers print, as somebody read them off: the same
 * limbs that the rows of their outcomes count, on the clock of those rows. Who never joined, or
 * lost the limb, was last seen at the end of follow-up.
 */
final class CurveFigures {
  /** What a figure shows besides the curve. */
  private enum Trait {
    WITHOUT_EVENT,
    AT_RISK,
    STROKES,
    EVENTS,
    MEDIAN
  }

  private static final Map<Integer, Set<Trait>> FIGURES =
      Map.ofEntries(
          Map.entry(1, EnumSet.of(Trait.AT_RISK, Trait.EVENTS)),
          Map.entry(2, EnumSet.of(Trait.AT_RISK)),
          Map.entry(3, EnumSet.of(Trait.AT_RISK, Trait.MEDIAN)),
          Map.entry(6, EnumSet.of(Trait.EVENTS)),
          Map.entry(12, EnumSet.of(Trait.WITHOUT_EVENT, Trait.AT_RISK)),
          Map.entry(13, EnumSet.of(Trait.STROKES)),
          Map.entry(18, EnumSet.of(Trait.AT_RISK, Trait.MEDIAN)),
          Map.entry(20, EnumSet.of(Trait.WITHOUT_EVENT, Trait.AT_RISK, Trait.EVENTS)),
          Map.entry(22, EnumSet.of(Trait.EVENTS)),
          Map.entry(55, EnumSet.of(Trait.AT_RISK, Trait.EVENTS, Trait.MEDIAN)));

  /** Months between numbers at risk under a figure. */
  private static final double EVERY = 6;

  /** How far a reading strays, in percentage points. */
  private static final double STRAYS = 0.4;

  private record Followed(double months, boolean joined) {}

  private final Set<Trait> traits;
  private final Unit unit;
  private final List<Followed> limbs;
  private final Draw draw;

  private CurveFigures(Set<Trait> traits, Unit unit, List<Followed> limbs, Draw draw) {
    this.traits = traits;
    this.unit = unit;
    this.limbs = limbs;
    this.draw = draw;
  }

  /** The curve of one arm; empty where its paper has no such figure. */
  static Optional<PublishedCurve> of(ArmRows arm, String armId, Draw draw) {
    if (!FIGURES.containsKey(arm.study.number())) {
      return Optional.empty();
    }
    List<Followed> limbs = arm.limbs.stream().map(CurveFigures::followed).toList();
    Set<Trait> traits = Objects.requireNonNull(FIGURES.get(arm.study.number()));
    return Optional.of(new CurveFigures(traits, arm.timeUnit(), limbs, draw).curve(armId));
  }

  private static Followed followed(TrueLimb limb) {
    double follow = limb.course().followUpMonths();
    boolean seen = UnionRows.joined(limb) && limb.course().unionMonths() <= follow;
    return new Followed(SummaryStyle.rounded(seen ? limb.course().unionMonths() : follow, 1), seen);
  }

  private PublishedCurve curve(String armId) {
    int joined = (int) limbs.stream().filter(Followed::joined).count();
    return new PublishedCurve(
        armId,
        Outcome.of("time-to-union"),
        unit,
        traits.contains(Trait.WITHOUT_EVENT) ? CurveShows.WITHOUT_EVENT : CurveShows.WITH_EVENT,
        points(),
        atRisk(),
        lastSeen(),
        new PublishedCurve.Totals(
            OptionalInt.of(limbs.size()),
            traits.contains(Trait.EVENTS) ? OptionalInt.of(joined) : OptionalInt.empty(),
            traits.contains(Trait.MEDIAN) ? median() : OptionalDouble.empty()),
        Optional.empty(),
        new Provenance(Optional.of("Figure 2"), Optional.empty()),
        new TreeMap<>(),
        Optional.empty());
  }

  /** The corners of the curve, each a little off as pointers are, and never turning back. */
  private List<Point> points() {
    List<Point> points = new ArrayList<>(List.of(point(0, 1)));
    double without = 1;
    double read = 1;
    for (double month : times(true)) {
      long events = limbs.stream().filter(l -> l.joined() && l.months() == month).count();
      without *= 1 - (double) events / followedTo(month);
      read = Math.max(0, Math.min(read, without + draw.uniform(-STRAYS, STRAYS) / 100));
      points.add(point(month, without == 0 ? 0 : read));
    }
    double end = limbs.stream().mapToDouble(Followed::months).max().orElse(0);
    if (without > 0 && shown(end) > points.get(points.size() - 1).time()) {
      points.add(point(end, read));
    }
    return points;
  }

  private Point point(double month, double without) {
    double percent = 100 * (traits.contains(Trait.WITHOUT_EVENT) ? without : 1 - without);
    return new Point(shown(month), SummaryStyle.rounded(percent, 1));
  }

  private TreeSet<Double> times(boolean joined) {
    TreeSet<Double> times = new TreeSet<>();
    limbs.stream().filter(l -> l.joined() == joined).forEach(l -> times.add(l.months()));
    return times;
  }

  private double shown(double month) {
    return SummaryStyle.rounded(Unit.MONTHS.to(unit, month), 1);
  }

  private int followedTo(double month) {
    return (int) limbs.stream().filter(limb -> limb.months() >= month).count();
  }

  private List<AtRisk> atRisk() {
    List<AtRisk> marks = new ArrayList<>();
    if (traits.contains(Trait.AT_RISK)) {
      double longest = limbs.stream().mapToDouble(Followed::months).max().orElse(0);
      for (double month = 0; month <= longest; month += EVERY) {
        marks.add(new AtRisk(shown(month), followedTo(month)));
      }
    }
    return marks;
  }

  private List<LastSeen> lastSeen() {
    List<LastSeen> seen = new ArrayList<>();
    if (traits.contains(Trait.STROKES)) {
      for (double month : times(false)) {
        int strokes = (int) limbs.stream().filter(l -> !l.joined() && l.months() == month).count();
        seen.add(new LastSeen(shown(month), strokes));
      }
    }
    return seen;
  }

  private OptionalDouble median() {
    double without = 1;
    for (double month : times(true)) {
      long events = limbs.stream().filter(l -> l.joined() && l.months() == month).count();
      without *= 1 - (double) events / followedTo(month);
      if (without <= 0.5) {
        return OptionalDouble.of(shown(month));
      }
    }
    return OptionalDouble.empty();
  }
}
