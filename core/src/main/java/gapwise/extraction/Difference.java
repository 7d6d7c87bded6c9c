package gapwise.extraction;

import gapwise.evidence.Reading;
import gapwise.exchange.Template;
import gapwise.exchange.TemplateColumn;
import java.util.Objects;
import java.util.Optional;

/**
 * One field that two people filled differently, or a row that one of them alone has.
 *
 * @param key names it within the comparison
 * @param pair the rows
 * @param column the field; empty where the row as a whole is in question
 * @param first what the first read; empty text for nothing
 * @param second what the second read
 * @param together numbers whose unit, or what they count, differs too are taken from one person
 *     together: the name of their group within the row; empty for others
 */
public record Difference(
    String key,
    RowPair pair,
    Optional<TemplateColumn> column,
    Value first,
    Value second,
    String together) {
  public Difference {
    Objects.requireNonNull(key, "key");
    Objects.requireNonNull(pair, "pair");
    Objects.requireNonNull(column, "column");
    Objects.requireNonNull(first, "first");
    Objects.requireNonNull(second, "second");
    Objects.requireNonNull(together, "together");
  }

  /**
   * What one person has.
   *
   * @param text as the template writes it
   * @param unit in what a number is, or what it counts; empty text for others
   * @param place where the row stands in the paper, in words
   * @param words of the paper, as reported
   * @param reading the page and the boxes where it was read
   */
  public record Value(
      String text, String unit, String place, String words, Optional<Reading> reading) {
    static final Value NOTHING = new Value("", "", "", "", Optional.empty());
  }

  /** What the person of a side has. */
  public Value value(Side side) {
    return side == Side.FIRST ? first : second;
  }

  /** Whether whoever settles it says why: always but where one of both read nothing there. */
  public boolean asksWhy(FieldChoice.Taken taken) {
    return taken == FieldChoice.Taken.THIRD
        || column.isEmpty()
        || (!first.text().isEmpty() && !second.text().isEmpty());
  }

  /** Whether a third value can hold: of a single field, not of a row or a curve. */
  public boolean takesThird() {
    return column.isPresent() && !pair.sheet().equals(Template.CURVES);
  }
}
