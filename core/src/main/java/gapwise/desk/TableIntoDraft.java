package gapwise.desk;

import gapwise.evidence.Reading;
import gapwise.exchange.Template;
import gapwise.printed.Proposed;
import gapwise.untidy.FoundField;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Takes what a person accepted of a table into the rows of a draft: to the groups that the person
 * named, to outcomes and patients that stand there already, or to new ones. Nothing that stands in
 * a draft is written over.
 */
public final class TableIntoDraft {
  private final FoundTable table;
  private final Map<String, String> groups;
  private final List<String> notTaken = new ArrayList<>();
  private Draft draft;

  private TableIntoDraft(Draft draft, FoundTable table, Map<String, String> groups) {
    this.draft = draft;
    this.table = table;
    this.groups = groups;
  }

  /**
   * The draft then, and what was not taken.
   *
   * @param draft with all that was taken
   * @param notTaken a sentence for each value that was not
   */
  public record Taken(Draft draft, List<String> notTaken) {
    public Taken {
      notTaken = List.copyOf(notTaken);
    }
  }

  /**
   * Takes fields.
   *
   * @param accepted of the table's fields; those without a value or a column are passed over
   * @param groups for each group of the table the draft's group that it is
   */
  public static Taken take(
      Draft draft, FoundTable table, List<FoundField> accepted, Map<String, String> groups) {
    TableIntoDraft into = new TableIntoDraft(draft, table, groups);
    accepted.stream()
        .filter(field -> field.value().state() != Proposed.State.LEFT)
        .filter(field -> !field.value().text().isEmpty())
        .filter(field -> Template.column(field.into(), field.value().column()).isPresent())
        .forEach(into::take);
    return new Taken(into.draft, into.notTaken);
  }

  private void take(FoundField field) {
    String column = field.value().column();
    if (column.equals(Template.STUDY) || column.equals(Template.ARM)) {
      return;
    }
    Optional<DraftRow> row = row(field);
    if (row.isEmpty()) {
      notTaken.add("No group was named for “" + field.words() + "”, so it was not taken.");
      return;
    }
    Optional<String> unitColumn =
        field.value().unit().flatMap(unit -> ReadWords.unitColumn(field.into(), column));
    if (unitColumn.isPresent()) {
      String unit = field.value().unit().orElseThrow().symbol();
      String stands = row.get().text(unitColumn.get());
      if (!stands.isEmpty() && !stands.equals(unit)) {
        notTaken.add(
            "“"
                + field.words()
                + "” is in "
                + unit
                + ", and the unit that stands there is "
                + stands
                + ". Type it converted, or change the unit.");
        return;
      }
      put(row.get().number(), unitColumn.get(), unit, Optional.empty(), field.words());
    }
    put(
        row.get().number(),
        column,
        field.value().text(),
        table.reading(field, column, draft.paper()),
        field.words());
  }

  private void put(
      int number, String column, String text, Optional<Reading> reading, String words) {
    DraftRow row = draft.row(number).orElseThrow();
    String stands = row.text(column);
    if (stands.isEmpty()) {
      draft = draft.withCell(number, column, text, reading);
    } else if (!stands.equals(text)) {
      notTaken.add(
          "“"
              + words
              + "” gives "
              + text
              + " where "
              + stands
              + " stands already. What stands was kept.");
    }
  }

  private Optional<DraftRow> row(FoundField field) {
    if (field.into().equals(Template.STUDIES)) {
      return draft.rows(Template.STUDIES).stream().findFirst();
    }
    Optional<String> group =
        field.whose().arm().flatMap(arm -> Optional.ofNullable(groups.get(arm)));
    return group.flatMap(
        arm ->
            switch (field.into()) {
              case "arms" -> armRow(arm);
              case "outcomes" -> outcomeRow(field, arm);
              default -> patientRow(field, arm);
            });
  }

  private Optional<DraftRow> armRow(String arm) {
    return draft.rows(Template.ARMS).stream()
        .filter(row -> row.text(Template.ARM).equals(arm))
        .findFirst();
  }

  private Optional<DraftRow> outcomeRow(FoundField field, String arm) {
    Map<String, String> cells = new TreeMap<>();
    field
        .row()
        .timePoint()
        .ifPresent(
            at -> {
              cells.put(
                  "time_point",
                  BigDecimal.valueOf(at.value()).stripTrailingZeros().toPlainString());
              cells.put("time_point_unit", at.unit().symbol());
            });
    field.row().subgroup().ifPresent(subgroup -> cells.put("subgroup", subgroup));
    String outcome = Objects.requireNonNull(field.outcome().orElse(""), "outcome");
    Optional<DraftRow> before = outcomeRow(outcome, arm, cells);
    if (before.isPresent() || outcome.isEmpty()) {
      return before;
    }
    draft = draft.withOutcome(outcome, cells);
    return outcomeRow(outcome, arm, cells);
  }

  private Optional<DraftRow> outcomeRow(String outcome, String arm, Map<String, String> cells) {
    return draft.rows(Template.OUTCOMES).stream()
        .filter(row -> row.text(Template.OUTCOME).equals(outcome))
        .filter(row -> row.text(Template.ARM).equals(arm))
        .filter(row -> cells.getOrDefault("time_point", "").equals(row.text("time_point")))
        .filter(row -> cells.getOrDefault("subgroup", "").equals(row.text("subgroup")))
        .findFirst();
  }

  private Optional<DraftRow> patientRow(FoundField field, String arm) {
    Optional<String> name = field.whose().patient();
    if (name.isEmpty()) {
      return Optional.empty();
    }
    Optional<DraftRow> before = patientRow(name.get(), arm);
    if (before.isEmpty()) {
      draft =
          draft.withRow(Template.PATIENTS, Map.of(Template.ARM, arm, Template.PATIENT, name.get()));
    }
    return patientRow(name.get(), arm);
  }

  private Optional<DraftRow> patientRow(String name, String arm) {
    return draft.rows(Template.PATIENTS).stream()
        .filter(row -> row.text(Template.PATIENT).equals(name))
        .filter(row -> row.text(Template.ARM).equals(arm))
        .findFirst();
  }
}
