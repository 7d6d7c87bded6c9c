package gapwise.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.table.TableFile;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.DataValidation;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The files in data-templates are those that the columns in the code make, to the last cell. */
class TemplateFilesTest {
  private static final Path KEPT = Path.of("..", "data-templates");

  @TempDir static Path fresh;

  @BeforeAll
  static void writeThemAgain() throws IOException {
    TemplateFiles.write(fresh);
  }

  @Test
  void theKeptTextFilesAreThoseThatTheCodeWrites() throws IOException {
    for (String name :
        List.of(
            "studies.csv",
            "arms.csv",
            "outcomes.csv",
            "patients.csv",
            "appraisal.csv",
            "curves.csv",
            "datapackage.json")) {
      assertEquals(
          Files.readString(fresh.resolve(name)),
          Files.readString(KEPT.resolve(name)),
          name + " has drifted; write it again with gapwise.exchange.TemplateFiles");
    }
  }

  @Test
  void theKeptWorkbookHoldsWhatTheCodeWrites() throws IOException {
    assertEquals(
        content(fresh.resolve("extraction-template.xlsx")),
        content(KEPT.resolve("extraction-template.xlsx")),
        "the workbook has drifted; write it again with gapwise.exchange.TemplateFiles");
  }

  @Test
  void theWorkbookHasFrozenNamesNotesAndListsWithEveryCode() throws IOException {
    try (InputStream bytes = Files.newInputStream(KEPT.resolve("extraction-template.xlsx"));
        XSSFWorkbook book = new XSSFWorkbook(bytes)) {
      assertEquals("readme", book.getSheetName(0));
      for (gapwise.exchange.Sheet described : Export.sheets(List.of())) {
        XSSFSheet sheet = book.getSheet(described.name());
        assertEquals(1, sheet.getPaneInformation().getHorizontalSplitPosition());
        for (int column = 0; column < described.fields().size(); column++) {
          Field<?> field = described.fields().get(column);
          assertEquals(field.name(), sheet.getRow(0).getCell(column).getStringCellValue());
          assertEquals(
              Readme.note(field),
              sheet.getRow(0).getCell(column).getCellComment().getString().getString());
        }
      }
      assertTrue(book.isSheetHidden(book.getSheetIndex("lists")));
      Set<String> listed = Set.copyOf(texts(book.getSheet("lists")));
      Method.vocabulary().all().forEach(m -> assertTrue(listed.contains(m.code()), m.code()));
      Outcome.vocabulary().all().forEach(o -> assertTrue(listed.contains(o.code()), o.code()));
      long lists =
          Export.sheets(List.of()).get(2).fields().stream()
              .filter(field -> !field.form().allowed().isEmpty())
              .count();
      List<? extends DataValidation> validations = book.getSheet("outcomes").getDataValidations();
      assertEquals(lists, validations.size());
    }
  }

  @Test
  void aBlankTemplateReadsAsATemplateWithoutStudies() throws IOException {
    Imported read = Import.read(TableFile.of(fresh.resolve("extraction-template.xlsx")), Set.of());
    assertTrue(read instanceof Imported.Wrong);
    assertEquals(
        List.of("no-studies"),
        ((Imported.Wrong) read).problems().stream().map(problem -> problem.code()).toList());
  }

  @Test
  void theDescriptionNamesEveryColumnWithItsTypeAndRequiredOnes() throws IOException {
    JsonNode root = JsonMapper.builder().build().readTree(DataPackage.json());
    int resources = 0;
    for (gapwise.exchange.Sheet sheet : Export.sheets(List.of())) {
      JsonNode resource = root.at("/resources/" + resources++);
      assertEquals(sheet.name() + ".csv", resource.get("path").asText());
      List<String> names = new ArrayList<>();
      resource
          .at("/schema/fields")
          .forEach(
              field -> {
                names.add(field.get("name").asText());
                assertTrue(
                    Set.of("string", "number", "integer", "date")
                        .contains(field.get("type").asText()));
              });
      assertEquals(sheet.names(), names);
      assertTrue(resource.at("/schema/fields/0/constraints/required").asBoolean());
    }
  }

  private static Map<String, String> content(Path file) throws IOException {
    Map<String, String> content = new TreeMap<>();
    try (InputStream bytes = Files.newInputStream(file);
        XSSFWorkbook book = new XSSFWorkbook(bytes)) {
      for (Sheet sheet : book) {
        for (Row row : sheet) {
          for (Cell cell : row) {
            String note =
                cell.getCellComment() == null
                    ? ""
                    : " / " + cell.getCellComment().getString().getString();
            content.put(sheet.getSheetName() + "!" + cell.getAddress(), cell + note);
          }
        }
        sheet
            .getDataValidations()
            .forEach(
                list ->
                    content.put(
                        sheet.getSheetName()
                            + " list "
                            + list.getRegions().getCellRangeAddress(0).formatAsString(),
                        list.getValidationConstraint().getFormula1()));
      }
    }
    return content;
  }

  private static List<String> texts(Sheet sheet) {
    List<String> texts = new ArrayList<>();
    sheet.forEach(row -> row.forEach(cell -> texts.add(cell.getStringCellValue())));
    return texts;
  }
}
