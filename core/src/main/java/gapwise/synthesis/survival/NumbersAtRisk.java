package gapwise.synthesis.survival;

import java.util.ArrayList;
import java.util.List;

/**
 * How many patients were still followed at some times, as printed under a curve. Immutable.
 *
 * @param marks the first at time 0, times rising, numbers never rising
 */
public record NumbersAtRisk(List<Mark> marks) {
  /**
   * One time.
   *
   * @param time at least 0
   * @param patients followed at least so long, at least 0
   */
  public record Mark(double time, int patients) {
    public Mark {
      if (!(time >= 0 && Double.isFinite(time) && patients >= 0)) {
        throw new IllegalArgumentException("no number at risk: " + patients + " at " + time);
      }
    }
  }

  public NumbersAtRisk {
    marks = List.copyOf(marks);
    if (marks.isEmpty() || marks.get(0).time() != 0 || marks.get(0).patients() < 1) {
      throw new IllegalArgumentException("numbers at risk must start at time 0 with a patient");
    }
    for (int i = 1; i < marks.size(); i++) {
      if (marks.get(i).time() <= marks.get(i - 1).time()
          || marks.get(i).patients() > marks.get(i - 1).patients()) {
        throw new IllegalArgumentException("numbers at risk must fall with time: " + marks);
      }
    }
  }

  /**
   * All patients at time 0, and what is known later.
   *
   * @param patients at least 1
   * @param later marks; one at time 0 is not repeated
   */
  public static NumbersAtRisk of(int patients, List<Mark> later) {
    List<Mark> all = new ArrayList<>();
    all.add(new Mark(0, patients));
    later.stream().filter(mark -> mark.time() > 0).forEach(all::add);
    return new NumbersAtRisk(all);
  }

  /** The last time at which a patient is known to be followed. */
  double lastFollowed() {
    return marks.stream().filter(m -> m.patients() > 0).mapToDouble(Mark::time).max().orElse(0);
  }
}
