package gapwise.synthesis.survival;

import gapwise.synthesis.survival.DigitisedCurve.Point;
import gapwise.synthesis.survival.NumbersAtRisk.Mark;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.function.IntUnaryOperator;

/**
 * Times of single patients from a published survival curve: Guyot, Ades, Ouwens and Welton, BMC Med
 * Res Methodol 2012;12:9. Between two numbers at risk, patients last seen without the event are
 * spread evenly and their number is chosen so that the next number at risk comes out; after the
 * last, so that the reported total of events comes out, or else at the rate seen so far. Without
 * numbers at risk the whole curve is one stretch; without a total either, nobody is taken to have
 * been lost before the curve's end.
 *
 * <p>Two choices differ from the paper's listing. Stretches are cut at the printed times rather
 * than at the next point read, so a number at risk holds at its own time. And the number lost is
 * found by halving an interval rather than by repeated correction, which need not end; what
 * rounding leaves over is lost after the stretch's last event.
 */
public final class CurveReconstruction {
  private final List<PatientTime> patients = new ArrayList<>();
  private final List<Mark> unreached = new ArrayList<>();
  private int left;
  private double survival = 1;
  private double difference;

  private CurveReconstruction(int patients) {
    left = patients;
  }

  /**
   * What came out.
   *
   * @param times of all patients
   * @param largestDifference between the reconstructed curve and a point read
   * @param unreached numbers at risk that the curve's fall does not leave room for
   */
  public record Reconstructed(PatientTimes times, double largestDifference, List<Mark> unreached) {
    public Reconstructed {
      unreached = List.copyOf(unreached);
    }
  }

  /**
   * Reconstructs. Grows with points times the logarithm of patients.
   *
   * @param atRisk at time 0 all patients, and later ones as far as they were published
   * @param events in all, if they were reported
   */
  public static Reconstructed of(DigitisedCurve curve, NumbersAtRisk atRisk, OptionalInt events) {
    CurveReconstruction work = new CurveReconstruction(atRisk.marks().get(0).patients());
    double end = Math.max(curve.end(), atRisk.lastFollowed());
    List<Stretch> stretches = cut(curve, atRisk, end);
    for (int i = 0; i + 1 < stretches.size(); i++) {
      work.upTo(atRisk.marks().get(i + 1), stretches.get(i));
    }
    work.toTheEnd(stretches.get(stretches.size() - 1), end, events);
    return new Reconstructed(PatientTimes.of(work.patients), work.difference, work.unreached);
  }

  private static List<Stretch> cut(DigitisedCurve curve, NumbersAtRisk atRisk, double end) {
    List<Stretch> stretches = new ArrayList<>();
    List<Point> points = curve.points();
    int next = 0;
    for (int i = 0; i < atRisk.marks().size(); i++) {
      boolean last = i + 1 == atRisk.marks().size();
      double from = atRisk.marks().get(i).time();
      double to = last ? Math.max(end, from) : atRisk.marks().get(i + 1).time();
      int first = next;
      while (next < points.size() && (last || points.get(next).time() < to)) {
        next++;
      }
      stretches.add(new Stretch(from, to, points.subList(first, next)));
    }
    return stretches;
  }

  private void upTo(Mark mark, Stretch stretch) {
    int target = mark.patients();
    if (stretch.walk(left, survival, 0).left() < target) {
      unreached.add(mark);
      take(stretch, 0);
      return;
    }
    take(stretch, fewestNotBelow(c -> stretch.walk(left, survival, c).left(), target, left));
    double after = stretch.lastPoint();
    double place = Math.min(after + (mark.time() - after) / 2, Math.nextDown(mark.time()));
    for (; left > target; left--) {
      patients.add(new PatientTime(Math.max(after, place), false));
    }
  }

  private void toTheEnd(Stretch stretch, double end, OptionalInt events) {
    int censored;
    if (events.isPresent()) {
      int missing = events.getAsInt() - events();
      IntUnaryOperator came = c -> stretch.walk(left, survival, c).events();
      int more = came.applyAsInt(0) < missing ? 0 : fewestNotBelow(came, missing, left);
      boolean better =
          more < left
              && Math.abs(came.applyAsInt(more + 1) - missing) < came.applyAsInt(more) - missing;
      censored = better ? more + 1 : more;
    } else {
      double rate = stretch.from() > 0 ? (patients.size() - events()) / stretch.from() : 0;
      censored = (int) Math.min(left, Math.round(rate * (stretch.to() - stretch.from())));
    }
    take(stretch, censored);
    for (; left > 0; left--) {
      patients.add(new PatientTime(end, false));
    }
  }

  /**
   * Of the numbers from 0 to {@code most} one at which a value that falls, but for rounding, is not
   * below a target, while the next number brings it to the target or below.
   *
   * @param value at 0 at or above the target
   */
  private static int fewestNotBelow(IntUnaryOperator value, int target, int most) {
    if (value.applyAsInt(0) <= target) {
      return 0;
    }
    int above = 0;
    int below = most + 1;
    while (below - above > 1) {
      int middle = (above + below) >>> 1;
      int found = value.applyAsInt(middle);
      if (found == target) {
        return middle;
      }
      if (found > target) {
        above = middle;
      } else {
        below = middle;
      }
    }
    return above;
  }

  private int events() {
    return (int) patients.stream().filter(PatientTime::event).count();
  }

  private void take(Stretch stretch, int censored) {
    Stretch.Walk walk =
        stretch.walk(
            left,
            survival,
            censored,
            (time, event, number) -> {
              for (int i = 0; i < number; i++) {
                patients.add(new PatientTime(time, event));
              }
            });
    left = walk.left();
    survival = walk.survival();
    difference = Math.max(difference, walk.difference());
  }
}
