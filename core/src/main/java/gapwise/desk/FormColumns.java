package gapwise.desk;

import gapwise.evidence.vocabulary.Outcome;
import gapwise.exchange.Template;
import gapwise.exchange.TemplateColumn;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * Which of the many columns of the template stand on the screen: those that nearly every paper
 * fills (common practice, no source), those in which something stands, and those asked for.
 */
public final class FormColumns {
  private static final Set<String> OF_STUDY =
      Set.of(
          "title",
          "first_author",
          "year",
          "journal",
          "doi",
          "design",
          "centres",
          "country",
          "recruitment_from",
          "recruitment_to");
  private static final Set<String> OF_GROUP =
      Set.of(
          "arm_id",
          "label",
          "method",
          "patients",
          "limbs",
          "bones",
          "defect_length_mean",
          "defect_length_min",
          "defect_length_max",
          "defect_length_unit",
          "infected",
          "follow_up_mean",
          "follow_up_unit");
  private static final Set<String> OF_EVENTS = Set.of("events", "total", "unit_counted");
  private static final Set<String> OF_AMOUNTS = Set.of("mean", "sd", "min", "max", "unit", "n");
  private static final Set<String> OF_CATEGORIES = Set.of("categories", "total");
  private static final Set<String> OF_PATIENT =
      Set.of("arm_id", "patient", "age", "sex", "defect_length", "defect_length_unit");

  private static final Set<String> OF_CURVE =
      Set.of("arm_id", "outcome", "time", "time_unit", "shows", "share", "at_risk", "patients");

  /** Named elsewhere on the page, or written by the program. */
  private static final Set<String> NEVER = Set.of(Template.STUDY, Template.READINGS);

  private FormColumns() {}

  /** The columns on the screen for rows that stand together, in the order of the sheet. */
  public static List<TemplateColumn> shown(Draft draft, String sheet, List<DraftRow> rows) {
    Set<String> names = new LinkedHashSet<>(usual(sheet, rows));
    rows.forEach(row -> names.addAll(row.cells().keySet()));
    String ofSheet = sheet + ".";
    draft.shown().stream()
        .filter(one -> one.startsWith(ofSheet))
        .forEach(one -> names.add(one.substring(ofSheet.length())));
    return Template.columns(sheet).stream()
        .filter(column -> names.contains(column.name()) && isShown(sheet, column))
        .toList();
  }

  /** The columns that may be added to those on the screen. */
  public static List<TemplateColumn> further(Draft draft, String sheet, List<DraftRow> rows) {
    List<TemplateColumn> shown = shown(draft, sheet, rows);
    return Template.columns(sheet).stream()
        .filter(column -> isShown(sheet, column) && !shown.contains(column))
        .toList();
  }

  private static boolean isShown(String sheet, TemplateColumn column) {
    boolean ofBlock =
        sheet.equals(Template.OUTCOMES)
            && Set.of(Template.ARM, Template.OUTCOME).contains(column.name());
    return !NEVER.contains(column.name()) && !ofBlock;
  }

  private static Set<String> usual(String sheet, List<DraftRow> rows) {
    if (sheet.equals(Template.STUDIES)) {
      return OF_STUDY;
    }
    if (sheet.equals(Template.ARMS)) {
      return OF_GROUP;
    }
    if (sheet.equals(Template.PATIENTS)) {
      return OF_PATIENT;
    }
    if (sheet.equals(Template.CURVES)) {
      return OF_CURVE;
    }
    return rows.stream()
        .findFirst()
        .flatMap(row -> Outcome.vocabulary().find(row.text(Template.OUTCOME)))
        .map(FormColumns::usual)
        .orElse(Set.of());
  }

  private static Set<String> usual(Outcome outcome) {
    if (outcome.isEvent()) {
      return OF_EVENTS;
    }
    if (outcome.kind() == Outcome.Kind.CATEGORIES) {
      return OF_CATEGORIES;
    }
    Set<String> usual = new LinkedHashSet<>(OF_AMOUNTS);
    if (outcome.needsClock()) {
      usual.add("clock");
    }
    return usual;
  }
}
