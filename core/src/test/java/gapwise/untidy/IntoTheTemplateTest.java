package gapwise.untidy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import gapwise.evidence.Study;
import gapwise.exchange.Export;
import gapwise.exchange.Import;
import gapwise.exchange.Imported;
import gapwise.exchange.KnownEvidence;
import gapwise.printed.Proposed;
import gapwise.problem.Problems;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is taken from an untidy sheet comes through the ordinary import whole. */
class IntoTheTemplateTest {
  @ParameterizedTest(name = "{0}")
  @ValueSource(
      strings = {
        "03-groups-as-section-lines",
        "05-percent-columns",
        "06-merged-first-column",
        "13-groups-in-columns-sections",
        "14-long-form",
        "15-groups-over-measures",
        "17-repeated-header"
      })
  void everyTakenValueIsStored(String name) throws IOException {
    Preview preview =
        UntidySheets.read(Example.of(name + ".txt").file(), List.of(), new Problems());
    TemplateRows.Written written = TemplateRows.of(preview.fields());
    assertEquals(List.of(), written.notWritten());
    Imported imported = Import.read(written.files(), KnownEvidence.NONE, key -> true, rows -> {});
    assertFalse(imported instanceof Imported.Wrong, imported.toString());
    List<Study> studies = ((Imported.Ready) imported).studies();
    List<String> lost = new ArrayList<>();
    for (FoundField field : preview.fields()) {
      if (field.value().state() == Proposed.State.TAKEN && !stored(field, studies)) {
        lost.add(Judged.told(field));
      }
    }
    assertEquals(List.of(), lost);
  }

  private static boolean stored(FoundField field, List<Study> studies) throws IOException {
    StringBuilder csv = new StringBuilder();
    Export.csv(studies, field.into(), csv);
    try (CSVParser rows =
        CSVFormat.RFC4180
            .builder()
            .setHeader()
            .setSkipHeaderRecord(true)
            .get()
            .parse(new StringReader(csv.toString().replaceFirst("^\uFEFF", "")))) {
      for (CSVRecord row : rows) {
        if (isOf(field, row.toMap())) {
          return true;
        }
      }
    }
    return false;
  }

  private static boolean isOf(FoundField field, Map<String, String> row) {
    String value =
        field.value().column().equals("patient")
            ? field.whose().patient().orElseThrow()
            : field.value().text();
    return row.get("study_id").equals(field.whose().study())
        && (field.into().equals("studies")
            || field.whose().arm().filter(arm -> arm.equals(row.get("arm_id"))).isPresent())
        && field.outcome().map(outcome -> outcome.equals(row.get("outcome"))).orElse(true)
        && field.whose().patient().map(patient -> patient.equals(row.get("patient"))).orElse(true)
        && value.replace('–', '-').equals(row.get(field.value().column()));
  }
}
