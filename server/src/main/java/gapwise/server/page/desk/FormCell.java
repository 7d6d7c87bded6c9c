package gapwise.server.page.desk;

import gapwise.desk.DraftRow;
import gapwise.evidence.Reading;
import gapwise.exchange.TemplateColumn;
import java.util.Objects;
import java.util.Optional;

/**
 * One cell of a draft, to be typed.
 *
 * @param row number of its row
 * @param column what it holds
 * @param whose the group or patient; empty text where the column says all
 * @param text what stands in it
 * @param reading where it was read
 */
public record FormCell(
    int row, TemplateColumn column, String whose, String text, Optional<Reading> reading) {
  public FormCell {
    Objects.requireNonNull(column, "column");
    Objects.requireNonNull(reading, "reading");
  }

  static FormCell of(DraftRow row, TemplateColumn column, String whose) {
    return new FormCell(
        row.number(), column, whose, row.text(column.name()), row.reading(column.name()));
  }

  /** Name of the element. */
  public String id() {
    return id(row, column.name());
  }

  static String id(int row, String column) {
    return "c-" + row + "-" + column;
  }

  /** Name in the form. */
  public String name() {
    return "c." + row + "." + column.name();
  }

  /** What it is called where nothing around it says so. */
  public String label() {
    return whose.isEmpty() ? column.title() : column.title() + ", " + whose;
  }

  /** Whether it is chosen from a list of which one word holds. */
  public boolean isChosen() {
    return !column.choices().isEmpty() && !column.several();
  }

  /** Whether what stands in it is none of the list, so that the list must show it beside. */
  public boolean isOutsideList() {
    return !text.isEmpty()
        && column.choices().stream().noneMatch(choice -> choice.code().equals(text));
  }
}
