package gapwise.exchange;

import java.util.ArrayList;
import java.util.List;

/** The words of the template for the person who fills it in. */
final class Readme {
  private static final int LISTED = 40;

  private Readme() {}

  /** The lines of the readme sheet. */
  static List<String> lines(List<Sheet> sheets) {
    List<String> lines = new ArrayList<>();
    lines.add("Extraction template for studies of bone lost to trauma of the lower limb");
    lines.add(
        "Fill in the sheets studies and arms, then outcomes, patients where a paper describes them"
            + " one by one, appraisal where people judged how a study was made, and curves where a"
            + " figure shows a time to an event. Columns may stand in any order; leave out those you do not need, but not"
            + " the underlined ones.");
    lines.add(
        "Write numbers as printed, in the unit printed, and name the unit. Decimal point and decimal"
            + " comma are both understood. One number a cell: what stands in brackets has columns of"
            + " its own.");
    lines.add(
        "A blank cell has not been extracted. Write NR or - where the paper does not report it, n/a"
            + " where it cannot apply, unclear where the paper cannot be understood. None of these is"
            + " ever read as 0.");
    lines.add(
        "arm_id ALL is a value that the paper gives for all its groups together. A comparison of two"
            + " groups without their numbers names the second in against_arm.");
    lines.add(
        "A row whose first cell starts with # is a remark and is not read, such as the row of"
            + " descriptions below the column names.");
    lines.add(
        "Text that starts with = + - or @ is written with an apostrophe before it, so that no program"
            + " runs it as a formula; reading takes the apostrophe away.");
    lines.add("Never write anything that identifies a patient.");
    for (Sheet sheet : sheets) {
      lines.add("");
      lines.add("Sheet " + sheet.name() + ". " + sheet.description());
      for (Field<?> field : sheet.fields()) {
        lines.add("  " + field.name() + ": " + note(field));
      }
    }
    return lines;
  }

  /** The note at a column's name. */
  static String note(Field<?> field) {
    StringBuilder note = new StringBuilder(field.title());
    if (!field.unit().isEmpty()) {
      note.append(" (").append(field.unit()).append(')');
    }
    note.append(". ").append(field.description());
    if (field.required()) {
      note.append(" Required.");
    }
    List<String> allowed = field.form().allowed();
    if (!allowed.isEmpty() && allowed.size() <= LISTED) {
      note.append(" One of: ").append(String.join(", ", allowed)).append('.');
    } else if (!allowed.isEmpty()) {
      note.append(" One of the ").append(allowed.size()).append(" codes of the drop-down list.");
    }
    if (!field.example().isEmpty()) {
      note.append(" Example: ").append(field.example());
    }
    return note.toString();
  }

  /** The cell of the row of descriptions. */
  static String remark(Field<?> field, boolean first) {
    String unit = field.unit().isEmpty() ? "" : " (" + field.unit() + ")";
    String required = field.required() ? ", required" : "";
    return (first ? "# " : "") + field.title() + unit + required;
  }
}
