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

  /** A person looks for the words of the sheet, and mappings go by the same words folded. */
  @Test
  void headingsAreShownAsTheyStand() {
    byte[] bytes =
        "Study,Method,Patients,Primary union (n/N),Gap (cm)\nMallowby 2012,bone transport,23,19/23,6\n"
            .getBytes(StandardCharsets.UTF_8);
    Preview preview = UntidySheets.read(TableFile.of("talk.csv", bytes), List.of(), new Problems());
    assertEquals(
        List.of(List.of("Study", "Method", "Patients", "Primary union (n/N)", "Gap (cm)")),
        preview.headings());
    assertEquals(
        "primary union n n", preview.mappings().get(0).columns().get(3).header(), "as it is kept");
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

  @Test
  void aColumnThatAPersonLeftOutIsSetApartAndSaysSo() {
    Mapping proposed = read("Mallowby 2012,bone transport,20,6.5,18", List.of()).mappings().get(0);
    Mapping.Column patients = proposed.columns().get(2);
    Mapping without =
        proposed.with(
            2,
            new Mapping.Column(
                patients.header(), MappingTarget.LEFT_OUT, List.of(), Optional.empty()));
    Preview next = read("Nightjarley 2015,Masquelet,31,5.2,27", List.of(without));
    assertTrue(next.fields().stream().noneMatch(field -> field.cell().equals("C2")));
    List<SetApart> apart = next.apart().stream().filter(one -> one.cell().equals("C2")).toList();
    assertEquals(1, apart.size(), "told once");
    assertTrue(apart.get(0).reason().contains("left this column out"));
  }

  @Test
  void ofTwoColumnsWithTheSameWordsEachKeepsItsOwn() {
    byte[] bytes =
        "Study,Method,n,Length,Length\nMallowby 2012,bone transport,20,6.5,8\n"
            .getBytes(StandardCharsets.UTF_8);
    TableFile file = TableFile.of("two.csv", bytes);
    Mapping proposed = UntidySheets.read(file, List.of(), new Problems()).mappings().get(0);
    Mapping.Column first =
        new Mapping.Column(
            proposed.columns().get(3).header(),
            "defect-length",
            List.of(Statistic.MEAN),
            Optional.of(Unit.CENTIMETRES));
    Mapping.Column second =
        new Mapping.Column(
            proposed.columns().get(4).header(),
            "follow-up",
            List.of(Statistic.MEAN),
            Optional.of(Unit.MONTHS));
    Mapping mapping = proposed.with(3, first).with(4, second);
    List<String> told =
        UntidySheets.read(file, List.of(mapping), new Problems()).fields().stream()
            .filter(field -> field.cell().matches("[DE]2"))
            .map(Judged::told)
            .toList();
    assertEquals(
        List.of(
            "arms mallowby-2012/A defect_length_mean=6.5 cm",
            "arms mallowby-2012/A follow_up_mean=8 months"),
        told);
  }

  /** What a person may choose is understood by the reading, whichever it is. */
  @Test
  void everyTargetOfTheListIsReadOrSaysWhyNot() {
    Mapping proposed = read("Mallowby 2012,bone transport,20,6.5,18", List.of()).mappings().get(0);
    for (MappingTarget target : MappingTarget.all()) {
      Mapping mapping =
          proposed.with(3, new Mapping.Column("hole", target.code(), List.of(), Optional.empty()));
      Preview preview = read("Mallowby 2012,bone transport,20,6.5,18", List.of(mapping));
      boolean told =
          preview.fields().stream().anyMatch(field -> field.cell().equals("D2"))
              || preview.apart().stream().anyMatch(one -> one.cell().equals("D2"));
      boolean identity =
          target.heading().startsWith("Of whom") || target.code().equals("infection-unclear");
      assertTrue(told || identity, target.code());
    }
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
