package gapwise.printed;

import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Missing;
import gapwise.evidence.vocabulary.YesOrNo;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/** What the text of one cell or phrase means. Numbers are as printed, in the unit printed. */
public sealed interface PrintedValue {

  /** Nothing is told, and why: "NR", "n/a", "-", a blank. */
  record Nothing(Missing reason) implements PrintedValue {}

  /** The same as in the cell above: a ditto mark. */
  record Ditto() implements PrintedValue {}

  /** Yes or no. */
  record Answer(YesOrNo answer) implements PrintedValue {}

  /**
   * One number.
   *
   * @param unit the unit printed beside it
   * @param bound whether the number itself is meant
   * @param whole whether it is printed without decimals
   * @param named what a word beside it says that it is
   */
  record Amount(
      double value, Optional<Unit> unit, Bound bound, boolean whole, Optional<Statistic> named)
      implements PrintedValue {}

  /** How a number is meant. */
  enum Bound {
    EXACT,
    ABOUT,
    BELOW,
    ABOVE
  }

  /**
   * A count of a total with its percentage; at least one of count and percentage is there.
   *
   * @param decimals how many decimals the percentage is printed with
   */
  record Share(OptionalDouble count, OptionalDouble total, OptionalDouble percent, int decimals)
      implements PrintedValue {
    /**
     * Whether count, total and percentage go together, the percentage rounded up or down.
     *
     * @param ofGroup the total to be taken where none is printed
     */
    public boolean agrees(OptionalDouble ofGroup) {
      OptionalDouble of = total.isPresent() ? total : ofGroup;
      if (percent.isPresent() && (percent.getAsDouble() < 0 || percent.getAsDouble() > 100)) {
        return false;
      }
      if (count.isEmpty() || of.isEmpty()) {
        return true;
      }
      if (count.getAsDouble() > of.getAsDouble() || of.getAsDouble() == 0) {
        return false;
      }
      double exact = 100 * count.getAsDouble() / of.getAsDouble();
      // A whole last digit, since papers cut off as well as round.
      double step = Math.pow(10, -decimals);
      return percent.isEmpty() || Math.abs(exact - percent.getAsDouble()) < step;
    }
  }

  /**
   * A mean or median with what tells its spread, or the limits alone.
   *
   * @param centre the number before the spread; empty for limits alone
   * @param said whether a word in the text says mean or median
   * @param deviation the number after a plus-minus sign or alone in brackets
   * @param limits pairs of numbers in the order printed
   * @param spread the spread as printed, such as "± 84" or "(5-20)"
   */
  record Summary(
      OptionalDouble centre,
      Optional<Statistic> said,
      Optional<Deviation> deviation,
      List<Limits> limits,
      Optional<Unit> unit,
      String spread)
      implements PrintedValue {
    public Summary {
      limits = List.copyOf(limits);
      Objects.requireNonNull(spread, "spread");
    }
  }

  /**
   * One number that tells a spread.
   *
   * @param said SD or SE where a word says so
   * @param plusMinus whether it stood after a plus-minus sign
   */
  record Deviation(double value, Optional<Statistic> said, boolean plusMinus) {}

  /**
   * Two numbers between which something lies.
   *
   * @param said RANGE, QUARTILES or CONFIDENCE where a word says so
   */
  record Limits(double low, double high, Optional<Statistic> said) {}

  /** A P value. */
  record Test(double p, Bound bound) implements PrintedValue {}

  /**
   * A day or month. A spreadsheet makes one of "3-5" or "11/12" without asking.
   *
   * @param pairs the pairs of numbers that may have been typed, the likelier first
   */
  record Dated(List<Pair> pairs) implements PrintedValue {
    public Dated {
      pairs = List.copyOf(pairs);
    }
  }

  /** Two numbers of a date in one order. */
  record Pair(int first, int second) {}

  /** Several readings are possible, and nothing in the text chooses. */
  record Several(List<PrintedValue> readings, String why) implements PrintedValue {
    public Several {
      readings = List.copyOf(readings);
    }
  }

  /** Words that are none of these. */
  record Words(String text) implements PrintedValue {}
}
