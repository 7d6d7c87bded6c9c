package gapwise.decision.cost;

import java.util.Arrays;
import java.util.List;

/**
 * Draws of how patients fare after one method, the same place in each column belonging together.
 * Immutable.
 */
public final class CourseDraws {
  private final double[] months;
  private final List<double[]> shares;

  private CourseDraws(double[] months, List<double[]> shares) {
    this.months = months;
    this.shares = shares;
  }

  /**
   * Holds columns of the same length.
   *
   * @param months mean months in treatment, with all that goes wrong, above 0
   * @param joined share of patients healed when treatment ends, 0 to 1; 0 after an amputation
   * @param infected share infected during treatment
   * @param amputated share amputated after the reconstruction failed; ignored after an amputation
   * @param reoperated share with an unplanned operation
   */
  public static CourseDraws of(
      double[] months,
      double[] joined,
      double[] infected,
      double[] amputated,
      double[] reoperated) {
    List<double[]> shares =
        List.of(joined.clone(), infected.clone(), amputated.clone(), reoperated.clone());
    if (months.length == 0 || !shares.stream().allMatch(s -> s.length == months.length)) {
      throw new IllegalArgumentException("a course needs draws, of each input as many");
    }
    if (!Arrays.stream(months).allMatch(m -> m > 0 && m <= 600)
        || !shares.stream().flatMapToDouble(Arrays::stream).allMatch(p -> p >= 0 && p <= 1)) {
      throw new IllegalArgumentException("months must be above 0, up to 600, shares 0 to 1");
    }
    return new CourseDraws(months.clone(), shares);
  }

  /** How many draws. */
  public int count() {
    return months.length;
  }

  /** One draw. */
  CourseInputs at(int draw) {
    return new CourseInputs(
        months[draw],
        shares.get(0)[draw],
        shares.get(1)[draw],
        shares.get(2)[draw],
        shares.get(3)[draw]);
  }

  /** The mean of every input. */
  CourseInputs means() {
    double[] means = shares.stream().mapToDouble(s -> Arrays.stream(s).sum() / s.length).toArray();
    return new CourseInputs(
        Arrays.stream(months).sum() / months.length, means[0], means[1], means[2], means[3]);
  }
}
