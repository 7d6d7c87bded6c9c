package gapwise.untidy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.unit.Unit;
import gapwise.printed.Proposed;
import gapwise.printed.Statistic;
import gapwise.problem.Problems;
import gapwise.table.TableFile;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A mapping that a person accepted is found again for the next sheet of its kind. */
class MappingTest {
  private static final String HEADER = "Study,Method,n,Hole,Joined";

  private static Preview read(String row, List<Mapping> known) {
    byte[] bytes = (HEADER + "\n" + row + "\n").getBytes(StandardCharsets.UTF_8);
    return UntidySheets.read(TableFile.of("next.csv", bytes), known, new Problems());
  }

  @Test
  void appliesWhatWasAcceptedToTheNextSheetOfThatKind() {
    Preview first = read("Mallowby 2012,bone transport,20,6.5,18", List.of());
    assertTrue(
        first.taken().stream().noneMatch(field -> field.cell().equals("D2")),
        "not understood at first");
    Mapping accepted = accepted(first.mappings().get(0));
    Mapping again = Mapping.ofJson(accepted.toJson());
    assertEquals(accepted, again);
    Preview next = read("Nightjarley 2015,Masquelet,31,52 mm,27", List.of(again));
    assertEquals(
        List.of(
            "arms nightjarley-2015/A defect_length_mean=52 mm",
            "outcomes nightjarley-2015/A primary-union events=27"),
        next.fields().stream()
            .filter(
                field ->
                    field.cell().matches("[DE]2") && field.value().state() == Proposed.State.TAKEN)
            .map(Judged::told)
            .toList());
  }

  @Test
  void isNotAppliedToAnotherHeader() {
    Mapping accepted =
        accepted(read("Mallowby 2012,bone transport,20,6.5,18", List.of()).mappings().get(0));
    byte[] other =
        "Study,Method,n,Hole\nMallowby 2012,bone transport,20,6.5\n"
            .getBytes(StandardCharsets.UTF_8);
    Preview preview =
        UntidySheets.read(TableFile.of("other.csv", other), List.of(accepted), new Problems());
    assertTrue(preview.taken().stream().noneMatch(field -> field.cell().equals("D2")));
  }

  @Test
  void refusesWhatIsNoMapping() {
    assertThrows(IllegalArgumentException.class, () -> Mapping.ofJson("{\"columns\": 3}"));
    assertThrows(IllegalArgumentException.class, () -> Mapping.ofJson("what"));
  }

  private static Mapping accepted(Mapping proposed) {
    List<Mapping.Column> columns = new ArrayList<>();
    for (Mapping.Column column : proposed.columns()) {
      columns.add(
          switch (column.header()) {
            case "hole" ->
                new Mapping.Column(
                    "hole",
                    "defect-length",
                    List.of(Statistic.MEAN),
                    Optional.of(Unit.CENTIMETRES));
            case "joined" ->
                new Mapping.Column(
                    "joined", "outcome:primary-union", List.of(Statistic.COUNT), Optional.empty());
            default -> column;
          });
    }
    return new Mapping(columns);
  }
}
