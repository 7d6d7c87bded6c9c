package gapwise.numeric;

import java.util.function.IntToDoubleFunction;
import org.apache.commons.numbers.core.Sum;

/**
 * The sum of terms counted from 0, in that order, with the rounding error of each addition carried
 * along, so that a million small terms beside a large one are not lost and the same terms always
 * give the same bits.
 */
public final class TermSum {
  private TermSum() {}

  /** The sum of {@code term(0) ... term(count - 1)}; 0 of none. */
  public static double of(int count, IntToDoubleFunction term) {
    Sum sum = Sum.create();
    for (int i = 0; i < count; i++) {
      sum.add(term.applyAsDouble(i));
    }
    return sum.getAsDouble();
  }
}
