package gapwise.extraction;

import gapwise.exchange.Template;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * By what two people's rows of a sheet are taken for the same, the surest first. An empty key fits
 * nothing.
 */
final class RowKeys {
  private static final Pattern LAST_NUMBER = Pattern.compile("(\\d+)\\D*$");

  private RowKeys() {}

  static List<Function<ReadRow, String>> of(String sheet) {
    return switch (sheet) {
      case "studies" -> List.of(row -> "the study");
      case "arms" -> arms();
      case "outcomes" -> outcomes();
      case "patients" ->
          List.of(
              row -> row.text(Template.ARM) + "|" + plain(row.text(Template.PATIENT)),
              row -> plain(row.text(Template.PATIENT)),
              row -> lastNumber(row.text(Template.PATIENT)));
      case "appraisal" ->
          List.of(
              row -> joined(row, "instrument", "outcome", "comparison", "item"),
              row -> joined(row, "instrument", "item"));
      default -> List.of(row -> joined(row, Template.ARM, Template.OUTCOME));
    };
  }

  /** People name groups as they like, so that the method says more than the letter. */
  private static List<Function<ReadRow, String>> arms() {
    return List.of(
        row -> row.text(Template.ARM).equals(Template.ALL) ? "all groups together" : "",
        row -> both(row.text(Template.ARM), row.text("method")),
        row -> both(plain(row.text("label")), row.text("method")),
        row -> isAll(row) ? "" : row.text("method"),
        row -> isAll(row) ? "" : plain(row.text("label")),
        row -> isAll(row) ? "" : row.text(Template.ARM));
  }

  private static boolean isAll(ReadRow row) {
    return row.text(Template.ARM).equals(Template.ALL);
  }

  private static List<Function<ReadRow, String>> outcomes() {
    List<String> what =
        List.of(Template.ARM, "against_arm", Template.OUTCOME, "phase", "subgroup", "standing");
    List<String> when = List.of("time_point", "time_point_unit");
    List<String> more =
        List.of("clock", "defect_from_cm", "defect_to_cm", "unit_counted", "effect_kind");
    return List.of(
        row -> joined(row, what, when, more),
        row -> joined(row, what, when),
        row -> joined(row, what),
        row -> joined(row, Template.ARM, Template.OUTCOME));
  }

  private static String both(String one, String other) {
    return one.isEmpty() || other.isEmpty() ? "" : one + "|" + other;
  }

  private static String joined(ReadRow row, String... columns) {
    return joined(row, List.of(columns));
  }

  @SafeVarargs
  private static String joined(ReadRow row, List<String>... columns) {
    List<String> texts = new ArrayList<>();
    for (List<String> some : columns) {
      some.forEach(column -> texts.add(row.text(column)));
    }
    return String.join("|", texts);
  }

  private static String plain(String text) {
    return text.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]", "");
  }

  /** "case 7", "patient 07" and "7" are one patient, where nobody else has the number. */
  private static String lastNumber(String name) {
    Matcher number = LAST_NUMBER.matcher(name);
    return number.find() ? number.group(1).replaceFirst("^0+(?=.)", "") : "";
  }
}
