package gapwise.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.EvidenceJson;
import gapwise.evidence.Study;
import gapwise.problem.Problems;
import gapwise.table.TableFile;
import gapwise.table.TableReader;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What is written reads back equal. The random numbers are not plausible, so reading stops before
 * the rules of plausibility.
 */
class RoundTripTest {

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void studiesReadFromCsvFilesAreEqualToThoseWritten(long seed) throws IOException {
    List<Study> studies = new RandomStudies(seed).some(12);
    assertSame(studies, read(csv(studies)));
  }

  @ParameterizedTest
  @ValueSource(longs = {21, 22})
  void studiesReadFromAWorkbookAreEqualToThoseWritten(long seed) throws IOException {
    List<Study> studies = new RandomStudies(seed).some(12);
    assertSame(studies, read(List.of(workbook(studies))));
  }

  @ParameterizedTest
  @ValueSource(longs = {31, 32})
  void studiesReadFromTheirStoredTextAreEqualToThoseWritten(long seed) {
    List<Study> studies = new RandomStudies(seed).some(40);
    assertEquals(
        studies,
        studies.stream().map(study -> EvidenceJson.read(EvidenceJson.write(study))).toList());
  }

  @Test
  void everyColumnOfEverySheetIsExercisedBySomeStudy() {
    List<Study> studies = new RandomStudies(1).some(120);
    List<String> never = new ArrayList<>();
    for (Sheet sheet : Export.sheets(studies)) {
      List<RowWriter> rows = Export.rows(studies, sheet).toList();
      for (Field<?> field : sheet.fields()) {
        if (rows.stream().noneMatch(row -> row.cells().containsKey(field.name()))) {
          never.add(sheet.name() + "." + field.name());
        }
      }
    }
    assertEquals(List.of(), never);
  }

  private static void assertSame(List<Study> written, List<Study> read) {
    assertEquals(written.size(), read.size());
    for (int index = 0; index < written.size(); index++) {
      // Text first: a difference in it is readable.
      assertEquals(
          EvidenceJson.write(written.get(index)).replace("},", "},\n"),
          EvidenceJson.write(read.get(index)).replace("},", "},\n"));
      assertEquals(written.get(index), read.get(index));
    }
    assertTrue(written.stream().anyMatch(study -> !study.outcomes().isEmpty()));
  }

  private static List<Study> read(List<TableFile> files) {
    Problems problems = new Problems();
    TemplateReading reading = new TemplateReading(problems);
    new TableReader().read(files, problems, reading);
    List<Study> studies = new Assembly(reading, problems, false).studies();
    assertEquals(List.of(), problems.list());
    return studies;
  }

  static List<TableFile> csv(List<Study> studies) throws IOException {
    List<TableFile> files = new ArrayList<>();
    for (String sheet : Export.sheets()) {
      StringBuilder text = new StringBuilder();
      Export.csv(studies, sheet, text);
      files.add(TableFile.of(sheet + ".csv", text.toString().getBytes(StandardCharsets.UTF_8)));
    }
    return files;
  }

  static TableFile workbook(List<Study> studies) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    Export.workbook(studies, bytes);
    return TableFile.of("studies.xlsx", bytes.toByteArray());
  }
}
