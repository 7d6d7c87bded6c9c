package gapwise.decision.cost;

/**
 * At which times a cycle's states are counted: a sum stands for an integral over time. Weights
 * stand before the discounted stream, so that a half cycle is discounted too (Naimark, Kabboul and
 * Krahn, Medical Decision Making 2013;33:961); Simpson's rule is closer (Elbasha and Chhatwal,
 * PharmacoEconomics 2016;34:13).
 */
public enum Counting {
  /** At the start of each cycle: too much of states that empty. */
  START,
  /** At the end of each cycle: too little of states that empty. */
  END,
  /** Half at each, the half cycle correction. */
  TRAPEZOID,
  /** Simpson's rule; of an odd number of cycles, three eighths over the last three. */
  SIMPSON;

  /**
   * The weight of a time.
   *
   * @param time from 0 to {@code cycles}
   * @param cycles 1 or more
   */
  public double weight(int time, int cycles) {
    return switch (this) {
      case START -> time < cycles ? 1 : 0;
      case END -> time > 0 ? 1 : 0;
      case TRAPEZOID -> time == 0 || time == cycles ? 0.5 : 1;
      case SIMPSON -> simpson(time, cycles);
    };
  }

  private static double simpson(int time, int cycles) {
    if (cycles == 1) {
      return 0.5;
    }
    int even = cycles % 2 == 0 ? cycles : cycles - 3;
    double weight = 0;
    if (time <= even && even > 0) {
      weight += time == 0 || time == even ? 1 / 3.0 : time % 2 == 1 ? 4 / 3.0 : 2 / 3.0;
    }
    if (even < cycles && time >= even) {
      weight += time == even || time == cycles ? 3 / 8.0 : 9 / 8.0;
    }
    return weight;
  }
}
