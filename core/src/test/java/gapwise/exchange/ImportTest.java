package gapwise.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.ReportedValue;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Missing;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.problem.Problem;
import gapwise.table.TableFile;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ImportTest {

  @ParameterizedTest(name = "{4}: {2}")
  @CsvSource(
      delimiter = '|',
      value = {
        // sheet | row | cells | column | code | words that the message must hold
        "outcomes | 2 | mean=12 (5-20) | mean | several-numbers | spread_unstated",
        "outcomes | 2 | mean=36 ± 7 | mean | several-numbers | sd",
        "outcomes | 2 | mean=5-20 | mean | several-numbers | min and max",
        "arms | 0 | defect_length_mean=4 [2-6];defect_length_unit=cm | defect_length_mean |"
            + " several-numbers | defect_length_spread_unstated",
        "arms | 0 | defect_length_mean=> 4;defect_length_unit=cm | defect_length_mean |"
            + " threshold-in-number | defect_length_over_cm",
        "outcomes | 2 | mean=9 months | mean | not-a-number | Units and words",
        "outcomes | 2 | mean=85% | mean | not-a-number | percent",
        "outcomes | 2 | mean=1,234 | mean | ambiguous-comma | 1234 or 1.234",
        "outcomes | 0 | events=17.5 | events | not-a-whole-number | whole number",
        "outcomes | 0 | outcome=primary unoin | outcome | unknown-code | Did you mean"
            + " primary-union?",
        "arms | 0 | method=bone-transprt | method | unknown-code | Did you mean bone-transport?",
        "arms | 0 | method= | method | missing-value | no method",
        "arms | 0 | method_parts=ring-frame; rngs | method_parts | unknown-code | list",
        "arms | 0 | bones=tibia 20; humerus 1 | bones | unknown-code | femur",
        "arms | 0 | defect_length_bands_cm=2 to 4 | defect_length_bands_cm | not-a-band | 2-4: 5",
        "arms | 0 | defect_length_mean=6 | defect_length_unit | missing-unit | cm",
        "outcomes | 2 | unit= | unit | missing-unit | months",
        "outcomes | 2 | unit=fortnights | unit | unknown-code | expected",
        "outcomes | 0 | time_point=6 | time_point_unit | missing-unit | months",
        "outcomes | 0 | time_point=6 | time_point_unit | missing-unit | time_point",
        "studies | 0 | recruitment_from=August 2011 | recruitment_from | not-a-month | 2011-08",
        "studies | 0 | title= | title | missing-value | Title",
        "outcomes | 0 | events=21 | events | impossible | events 21 exceed total 20",
        "outcomes | 2 | min=10 | mean | impossible | larger than mean",
        "outcomes | 0 | mean=5;unit=months | events | several-forms | row of its own",
        "outcomes | 0 | events=;total= | events | no-value | statement",
        "outcomes | 0 | person_time=40 | person_time_unit | incomplete-rate | unit",
        "outcomes | 0 | outcome=complications;percent=90 | percent | not-a-share | rate",
        "outcomes | 0 | person_time=40;person_time_unit=years | total | not-a-share | rate",
        "outcomes | 0 | effect_p=0.03;events=;total= | effect_kind | incomplete-effect | estimate",
        "outcomes | 0 | categories=excellent;events=;total= | categories | not-a-category |"
            + " excellent 12; good 5",
        "outcomes | 0 | arm_id=C | arm_id | unknown-arm | A, B",
        "outcomes | 0 | against_arm=C | against_arm | unknown-arm | A, B",
        "outcomes | 2 | test_arm=C;test_p=0.02 | test_arm | unknown-arm | A, B",
        "outcomes | 2 | test_p=0.02 | test_arm | incomplete-test | test_words",
        "outcomes | 2 | test_arm=B | test_p | incomplete-test | test_words",
        "outcomes | 2 | test_arm=B;test_p=0 | test_p | not-an-exact-p | test_words",
        "outcomes | 0 | study_id=s2 | study_id | unknown-study | Did you mean s1?",
        "arms | 1 | arm_id=A | arm_id | duplicate-arm | row 2",
        "patients | 0 | study_id=zz | study_id | unknown-study | studies",
        "patients | 0 | union=1 | union | unknown-code | yes, no",
        "patients | 0 | defect_length=6 | defect_length_unit | missing-unit | cm or mm",
        "patients | 0 | age=140 | age | impossible | 140",
        "studies | 0 | jornal=x | jornal | unknown-column | Did you mean journal?",
      })
  void whatIsWrongIsToldBySheetRowColumnAndWhatToDo(
      String sheet, int row, String cells, String column, String code, String words) {
    FilledTemplate template = FilledTemplate.sound();
    template.set(sheet, row, cells.split(";(?! )"));
    Imported read = template.read();
    assertTrue(read instanceof Imported.Wrong, read.toString());
    Problem problem = ((Imported.Wrong) read).problems().get(0);
    int shownRow = code.equals("unknown-column") ? 1 : row + 2;
    assertTrue(problem.where().startsWith("sheet " + sheet + ", row " + shownRow), problem.where());
    assertTrue(problem.where().endsWith(column + ")"), problem.where());
    assertEquals(code, problem.code());
    assertTrue(problem.message().contains(words), problem.message());
    assertTrue(problem.message().endsWith("."), problem.message());
  }

  @Test
  void everythingWrongIsToldInOneGo() {
    FilledTemplate template =
        FilledTemplate.sound()
            .set("studies", 0, "year=next")
            .set("arms", 0, "patients=many", "limbs=few")
            .set("outcomes", 0, "total=5")
            .set("outcomes", 3, "mean=x", "sd=y")
            .set("patients", 0, "age=old");
    List<Problem> problems = ((Imported.Wrong) template.read()).problems();
    assertEquals(7, problems.size(), problems.toString());
  }

  @ParameterizedTest
  @ValueSource(strings = {"-", "NR", "nr", "n/a", "not reported", "Unclear", "–", "?"})
  void wordsForMissingAreReasonsAndNeverZero(String word) {
    Imported read =
        FilledTemplate.sound().set("arms", 0, "diabetics=" + word, "age_mean=" + word).read();
    Study study = ((Imported.Ready) read).studies().get(0);
    assertEquals(Set.of("diabetics", "age_mean"), study.arms().get(0).missing().keySet());
    assertTrue(study.arms().get(0).baseline().diabetics().isEmpty());
    assertTrue(study.arms().get(0).baseline().age().isEmpty());
  }

  @Test
  void unclearIsAnAnswerWhereTheColumnAsksAQuestion() {
    Imported read =
        FilledTemplate.sound().set("studies", 0, "consecutive=unclear", "year=unclear").read();
    Study study = ((Imported.Ready) read).studies().get(0);
    assertEquals(YesOrNo.UNCLEAR, study.consecutive().orElseThrow());
    assertEquals(Map.of("year", Missing.UNCLEAR), study.missing());
  }

  @Test
  void aDecimalCommaIsUnderstoodAndUnitsStayAsPrinted() {
    Imported read =
        FilledTemplate.sound()
            .set("arms", 0, "defect_length_mean=58,5", "defect_length_unit=mm")
            .read();
    var defect =
        ((Imported.Ready) read).studies().get(0).arms().get(0).baseline().defect().orElseThrow();
    assertEquals(OptionalDouble.of(58.5), defect.summary().orElseThrow().mean());
    assertEquals(5.85, defect.centreCentimetres().orElseThrow(), 1e-12);
  }

  @Test
  void manyEventsInFewPatientsAreATallyOfACountAndNotAShare() {
    FilledTemplate template =
        FilledTemplate.sound()
            .add(
                "outcomes",
                "study_id=s1",
                "arm_id=A",
                "outcome=complications",
                "events=31",
                "total=20");
    Study study = ((Imported.Ready) template.read()).studies().get(0);
    assertEquals(
        new ReportedValue.Tally(31, java.util.OptionalInt.of(20)), study.outcomes().get(4).value());
  }

  @Test
  void studiesWithoutArmsAndSheetsThatAreMissingAreTold() {
    List<Problem> withoutArms =
        FilledTemplate.sound().without("outcomes").without("patients").withoutRows("arms").found();
    assertEquals(List.of("study-without-arms"), withoutArms.stream().map(Problem::code).toList());
    List<Problem> noSheet = FilledTemplate.sound().without("arms").found();
    assertTrue(
        noSheet.stream()
            .anyMatch(p -> p.code().equals("missing-sheet") && p.message().contains("arms")),
        noSheet.toString());
  }

  @Test
  void aSheetThatTheTemplateDoesNotHaveIsADoubtAndNotPassedOverInSilence() {
    List<TableFile> files = new ArrayList<>(FilledTemplate.sound().files());
    files.add(TableFile.of("outcome.csv", "a,b\r\n1,2\r\n".getBytes(StandardCharsets.UTF_8)));
    Imported read = Import.read(files, Set.of(), rows -> {});
    assertEquals(
        List.of("sheet-not-read"),
        read.warnings().stream().map(warning -> warning.problem().code()).toList());
    assertTrue(read.warnings().get(0).problem().message().contains("If it is outcomes"));
  }

  @Test
  void aFolderOfCsvFilesIsReadAndComparedWithStudiesThatAreKnown(@TempDir Path folder)
      throws IOException {
    FilledTemplate template = FilledTemplate.sound();
    Study known = ((Imported.Ready) template.read()).studies().get(0);
    for (TableFile file : template.files()) {
      try (InputStream bytes = file.opening().open()) {
        Files.copy(bytes, folder.resolve(file.name()));
      }
    }
    Imported again = Import.read(folder, List.of(known)::forEach, key -> false, rows -> {});
    assertEquals(new Imported.Ready(List.of(known), List.of()), again, "a new version of itself");
    Study elsewhere = Study.with("s9", known.citation()).arms(known.arms()).build();
    Imported doubted = Import.read(folder, List.of(elsewhere)::forEach, key -> false, rows -> {});
    assertEquals("same-paper-twice", doubted.warnings().get(0).problem().code());
    assertEquals(
        "sheet studies, row 2, column B (title)", doubted.warnings().get(0).problem().where());
  }

  @Test
  void theOrderOfSheetsIsFree() {
    List<TableFile> files = new ArrayList<>(FilledTemplate.sound().files());
    Imported before = Import.read(files, Set.of(), rows -> {});
    Collections.reverse(files);
    assertEquals(before, Import.read(files, Set.of(), rows -> {}));
  }

  @Test
  void aDoubtMustBeAcknowledgedByItsKeyWhichOutlivesAMoveOfTheRow() {
    FilledTemplate template =
        FilledTemplate.sound().set("arms", 0, "defect_length_max=38", "defect_length_unit=cm");
    Imported.NeedsAcknowledgement asked = (Imported.NeedsAcknowledgement) template.read();
    assertEquals(1, asked.read().size());
    Set<String> keys = asked.open().stream().map(Warning::key).collect(Collectors.toSet());
    Imported ready = Import.read(template.files(), keys, rows -> {});
    assertTrue(ready instanceof Imported.Ready);
    assertEquals(1, ready.warnings().size());
    FilledTemplate moved =
        FilledTemplate.sound()
            .set("arms", 0, "arm_id=B", "method=induced-membrane", "patients=18", "limbs=18")
            .set(
                "arms",
                1,
                "arm_id=A",
                "method=bone-transport",
                "patients=20",
                "limbs=20",
                "defect_length_max=38",
                "defect_length_unit=cm");
    assertTrue(Import.read(moved.files(), keys, rows -> {}) instanceof Imported.Ready);
    moved.set("arms", 1, "defect_length_max=39");
    assertTrue(
        Import.read(moved.files(), keys, rows -> {}) instanceof Imported.NeedsAcknowledgement,
        "another value is another doubt");
  }

  @Test
  void aTemplateThatIsWrongEverywhereStopsAtAThousandProblems() {
    FilledTemplate template = FilledTemplate.sound();
    IntStream.range(0, 3000)
        .forEach(
            n ->
                template.add("outcomes", "study_id=s1", "arm_id=A", "outcome=nothing", "events=x"));
    List<Problem> problems = ((Imported.Wrong) template.read()).problems();
    assertEquals("too-many-problems", problems.get(problems.size() - 1).code());
    assertTrue(problems.size() < 1010, "" + problems.size());
  }

  @Test
  void aNumberThatASpreadsheetMadeADateIsRefusedAndAMonthIsTakenBack() throws IOException {
    Imported read = Import.read(workbook(true), Set.of());
    List<Problem> problems = ((Imported.Wrong) read).problems();
    assertEquals(List.of("date-damage"), problems.stream().map(Problem::code).toList());
    assertEquals("sheet arms, row 2, column D (defect_length_mean)", problems.get(0).where());
    Imported sound = Import.read(workbook(false), Set.of());
    assertEquals(
        "2011-08",
        ((Imported.Ready) sound).studies().get(0).recruitmentFrom().orElseThrow().toString());
  }

  /** A workbook as a spreadsheet leaves it: 2011-08 became a day, and with it perhaps 3-5. */
  private static TableFile workbook(boolean damaged) throws IOException {
    try (XSSFWorkbook book = new XSSFWorkbook();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream()) {
      CellStyle date = book.createCellStyle();
      date.setDataFormat(book.createDataFormat().getFormat("yyyy-mm-dd"));
      XSSFSheet studies = book.createSheet("Studies");
      row(studies, 0, "study_id", "title", "recruitment_from");
      row(studies, 1, "s1", "Invented series");
      Cell month = studies.getRow(1).createCell(2);
      month.setCellValue(java.time.LocalDate.of(2011, 8, 1));
      month.setCellStyle(date);
      XSSFSheet arms = book.createSheet("arms");
      row(arms, 0, "study_id", "arm_id", "method", "defect_length_mean", "defect_length_unit");
      row(arms, 1, "s1", "A", "autograft");
      Cell length = arms.getRow(1).createCell(3);
      if (damaged) {
        length.setCellValue(java.time.LocalDate.of(2024, 5, 3));
        length.setCellStyle(date);
      } else {
        length.setCellValue(5.8);
      }
      arms.getRow(1).createCell(4).setCellValue("cm");
      book.write(bytes);
      return TableFile.of("filled.xlsx", bytes.toByteArray());
    }
  }

  private static void row(XSSFSheet sheet, int number, String... texts) {
    var row = sheet.createRow(number);
    for (int column = 0; column < texts.length; column++) {
      row.createCell(column).setCellValue(texts[column]);
    }
  }

  @Test
  void textThatASpreadsheetWouldRunIsWrittenHarmlessInBothForms() throws IOException {
    Study study =
        ((Imported.Ready) FilledTemplate.sound().set("studies", 0, "note==HYPERLINK(\"x\")").read())
            .studies()
            .get(0);
    assertEquals("=HYPERLINK(\"x\")", study.note().orElseThrow());
    StringBuilder csv = new StringBuilder();
    Export.csv(List.of(study), "studies", csv);
    assertTrue(csv.toString().contains("\"'=HYPERLINK(\"\"x\"\")\""), csv.toString());
    Study again =
        ((Imported.Ready) Import.read(RoundTripTest.workbook(List.of(study)), Set.of()))
            .studies()
            .get(0);
    assertEquals(study, again);
  }
}
