package gapwise.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.exchange.Template;
import gapwise.printed.Proposed;
import gapwise.untidy.FoundField;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Tables pasted into a draft. Patients and numbers are invented. */
class TableIntoDraftTest {
  private static final String PATIENTS =
      "Case\tAge (years)\tDefect (cm)\tUnion\tTime to union (weeks)\n"
          + "1\t34\t6.0\tyes\t28\n"
          + "2\t41\t5.5\tyes\t31\n"
          + "3\t29\t7.2\tno\t-\n";

  private static List<FoundField> found(FoundTable table) {
    return table.preview().fields().stream()
        .filter(field -> field.value().state() == Proposed.State.TAKEN)
        .toList();
  }

  private static String group(FoundTable table) {
    return table.preview().fields().stream()
        .flatMap(field -> field.whose().arm().stream())
        .findFirst()
        .orElseThrow();
  }

  @Test
  void pastedPatientsBecomeTheirRows() {
    FoundTable table = FoundTable.pasted(PATIENTS);
    Draft draft =
        TableIntoDraft.take(DraftTest.complete(), table, found(table), Map.of(group(table), "A"))
            .draft();
    List<DraftRow> rows = draft.rows(Template.PATIENTS);
    assertEquals(3, rows.size(), "rows: " + rows);
    assertEquals("34", rows.get(0).text("age"));
    assertEquals("6", rows.get(0).text("defect_length").replaceFirst("\\.0$", ""));
    assertEquals("cm", rows.get(0).text("defect_length_unit"));
    assertEquals("A", rows.get(2).text(Template.ARM));
  }

  @Test
  void whatStandsInADraftIsNotWrittenOver() {
    FoundTable table = FoundTable.pasted(PATIENTS);
    Map<String, String> groups = Map.of(group(table), "A");
    Draft once = TableIntoDraft.take(DraftTest.complete(), table, found(table), groups).draft();
    int first = once.rows(Template.PATIENTS).get(0).number();
    Draft typed = once.withCell(first, "age", "35", Optional.empty());
    TableIntoDraft.Taken twice = TableIntoDraft.take(typed, table, found(table), groups);
    assertEquals("35", twice.draft().row(first).orElseThrow().text("age"));
    assertEquals(3, twice.draft().rows(Template.PATIENTS).size());
    assertTrue(
        twice.notTaken().stream().anyMatch(line -> line.contains("34") && line.contains("35")),
        "not taken: " + twice.notTaken());
  }

  @Test
  void withoutAGroupNothingIsTakenAndItIsSaid() {
    FoundTable table = FoundTable.pasted(PATIENTS);
    TableIntoDraft.Taken taken =
        TableIntoDraft.take(DraftTest.complete(), table, found(table), Map.of());
    assertEquals(List.of(), taken.draft().rows(Template.PATIENTS));
    assertTrue(!taken.notTaken().isEmpty());
  }
}
