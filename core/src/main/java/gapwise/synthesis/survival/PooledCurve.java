package gapwise.synthesis.survival;

import gapwise.effect.Interval;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * One survival curve from several studies, after Combescure, Foucher and Jackson (Stat Med
 * 2014;33:2521): shares passing each interval are pooled with random effects, and the pooled curve
 * is their product, so it never rises and a study speaks as long as it follows patients. Variances
 * between studies are estimated for all pairs of intervals ({@link BetweenStudyCovariance}), since
 * a study that does well early does well late.
 *
 * <p>The paper pools arcsines of the shares; here they are pooled as they are, with weights 1/(v +
 * variance between studies) and v = Q (1 - Q)/n from the share Q of all patients together. Pooled
 * arcsines are pulled towards 1 when studies of a dozen patients pass an interval without an event;
 * shares are not, need nothing added, and without variance between studies give the curve of all
 * patients together. Immutable.
 */
public final class PooledCurve {
  private static final double ROUNDING = 1e-9;

  private final List<Point> points;

  /**
   * The curve at one time.
   *
   * @param time end of an interval
   * @param studies that speak of the interval
   * @param atRisk their patients at its start
   * @param survival pooled share without the event up to here
   * @param standardErrorOfLog of log survival; empty where survival is 0
   * @param limits of the mean curve; empty where survival is 0 or 1
   * @param prediction limits for a further study; empty also where fewer than three studies speak
   */
  public record Point(
      double time,
      int studies,
      int atRisk,
      double survival,
      OptionalDouble standardErrorOfLog,
      Optional<Interval> limits,
      Optional<Interval> prediction) {}

  private PooledCurve(List<Point> points) {
    this.points = List.copyOf(points);
  }

  /**
   * Pools.
   *
   * @param studies patients' times of each
   * @param times at which the curve is told, above 0, rising
   * @param level of limits, which are made on the log(-log) scale with Student's t on one degree of
   *     freedom fewer than the fewest studies so far (Follmann and Proschan, Biometrics
   *     1999;55:732); they may rise again where studies end, as less is known then
   * @return empty if no interval has two studies that speak of it
   */
  public static Optional<PooledCurve> of(
      List<PatientTimes> studies, List<Double> times, double level) {
    ConditionalSurvival data = new ConditionalSurvival(studies, times);
    return data.intervals() == 0
        ? Optional.empty()
        : Optional.of(new PooledCurve(new IntervalPooling(data, level).points()));
  }

  /**
   * Times chosen from the data: up to ten, with about as many events between each two, as long as
   * two studies follow patients. Empty if no event came until then.
   */
  public static List<Double> times(List<PatientTimes> studies) {
    double[] longest = studies.stream().mapToDouble(PatientTimes::longest).sorted().toArray();
    if (longest.length < 2) {
      return List.of();
    }
    double end = longest[longest.length - 2];
    double[] events =
        studies.stream()
            .flatMap(study -> study.patients().stream())
            .filter(patient -> patient.event() && patient.time() > 0 && patient.time() <= end)
            .mapToDouble(PatientTime::time)
            .sorted()
            .toArray();
    List<Double> times = new ArrayList<>();
    int parts = Math.min(10, events.length);
    for (int part = 1; part <= parts; part++) {
      double time = events[(int) ((long) events.length * part / parts) - 1];
      if (times.isEmpty() || time > times.get(times.size() - 1)) {
        times.add(time);
      }
    }
    return times;
  }

  /** The points, in order of time. */
  public List<Point> points() {
    return points;
  }

  /**
   * Where the curve crosses one half, with a constant rate of events between two times; empty if it
   * stays above.
   */
  public OptionalDouble median() {
    return crossing(Point::survival);
  }

  /** Where the lower limit crosses one half. */
  public OptionalDouble medianLower() {
    return crossing(p -> p.limits().map(Interval::lower).orElse(p.survival()));
  }

  /**
   * Where the upper limit crosses one half; empty if it does not. A share of 0 has no limits, and
   * so nothing above which it cannot be.
   */
  public OptionalDouble medianUpper() {
    return crossing(p -> p.limits().map(Interval::upper).orElse(1.0));
  }

  private OptionalDouble crossing(ToDoubleFunction<Point> height) {
    double time = 0;
    double before = 1;
    for (Point point : points) {
      double after = height.applyAsDouble(point);
      if (after <= 0.5 + ROUNDING) {
        double way =
            after == 0
                ? (before - 0.5) / before
                : Math.log(before / 0.5) / Math.log(before / after);
        return OptionalDouble.of(time + (point.time() - time) * Math.min(1, way));
      }
      time = point.time();
      before = after;
    }
    return OptionalDouble.empty();
  }
}
