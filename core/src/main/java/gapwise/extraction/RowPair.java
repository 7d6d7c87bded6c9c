package gapwise.extraction;

import gapwise.exchange.Template;
import gapwise.exchange.TemplateWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Two rows that tell of the same, or one that only one person has.
 *
 * @param sheet sheet of the template
 * @param first of the person named first
 * @param second of the other, with the groups called as the first calls them
 */
public record RowPair(String sheet, Optional<ReadRow> first, Optional<ReadRow> second) {
  private static final List<String> NAMED_BY =
      List.of(
          Template.ARM,
          "against_arm",
          Template.OUTCOME,
          "phase",
          "subgroup",
          "time_point",
          "time_point_unit",
          "clock",
          "standing",
          Template.PATIENT,
          "instrument",
          "comparison",
          "item");

  public RowPair {
    Objects.requireNonNull(sheet, "sheet");
    if (first.isEmpty() && second.isEmpty()) {
      throw new IllegalArgumentException("a pair of no rows");
    }
  }

  /** The row of a side. */
  public Optional<ReadRow> row(Side side) {
    return side == Side.FIRST ? first : second;
  }

  /** The row, of the first where both have it. */
  public ReadRow any() {
    return first.or(() -> second).orElseThrow();
  }

  /** Whose alone it is. */
  public Optional<Side> only() {
    if (first.isPresent() && second.isPresent()) {
      return Optional.empty();
    }
    return Optional.of(first.isPresent() ? Side.FIRST : Side.SECOND);
  }

  /** What tells it from its neighbours, in the order of the sheet; nothing for the study itself. */
  public List<String> named() {
    List<String> named = new ArrayList<>();
    ReadRow row = any();
    for (String column : NAMED_BY) {
      if (!row.text(column).isEmpty() && Template.column(sheet, column).isPresent()) {
        named.add(row.text(column));
      }
    }
    return List.copyOf(named);
  }

  /** The same as people read it. */
  public List<String> inWords() {
    return TemplateWords.row(sheet, NAMED_BY, any()::text);
  }

  /** Names it within the comparison of two extractions. */
  public String key() {
    return sheet
        + "."
        + first.map(row -> Integer.toString(row.number())).orElse("")
        + "-"
        + second.map(row -> Integer.toString(row.number())).orElse("");
  }
}
