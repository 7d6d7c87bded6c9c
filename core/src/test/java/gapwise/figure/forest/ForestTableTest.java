package gapwise.figure.forest;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.figure.file.CsvCell;
import gapwise.figure.span.Span;
import gapwise.figure.value.Estimate;
import java.io.IOException;
import java.io.StringReader;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ForestTableTest {
  private static final Forest FOREST = InventedForests.twoMethods();

  private static List<CSVRecord> records(Forest forest) throws IOException {
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    return format.parse(new StringReader(ForestTable.of(forest).csv())).getRecords();
  }

  @Test
  void theTableHoldsEverySeriesEverySummaryAndWhatWasLeftOutInTheOrderOfTheFigure() {
    List<ForestTable.Kind> kinds =
        ForestTable.of(FOREST).lines().stream().map(ForestTable.Line::kind).toList();
    assertEquals(11, kinds.size());
    assertEquals(ForestTable.Kind.BLOCK, kinds.get(4));
    assertEquals(ForestTable.Kind.BLOCK, kinds.get(9));
    assertEquals(ForestTable.Kind.LEFT_OUT, kinds.get(10));
  }

  @Test
  void theCsvReadsBackWithAllDigitsAndItsMetadataInEveryLine() throws IOException {
    List<CSVRecord> records = records(FOREST);
    CSVRecord first = records.get(0);
    assertEquals(27.0 / 31, Double.parseDouble(first.get("estimate")), 0.0);
    assertEquals("87 (70 to 96)", first.get("shown"));
    CSVRecord pooled = records.get(4);
    assertEquals("0.74", pooled.get("prediction-lower"));
    assertEquals("4 series, 115 limbs", pooled.get("counts"));
    for (CSVRecord each : records) {
      assertTrue(each.isConsistent());
      assertEquals("change 412", each.get("data-version"));
      assertEquals("2026-01-31", each.get("data-date"));
      assertEquals("yes", each.get("invented"));
      assertEquals("of-100", each.get("measure"));
    }
    assertEquals("", records.get(10).get("estimate"));
    assertFalse(records.get(10).get("detail").isBlank());
  }

  @Test
  void linesEndAsTheStandardSays() {
    // RFC 4180, section 2: lines are delimited by CR LF.
    String csv = ForestTable.of(FOREST).csv();
    assertEquals(12, csv.split("\r\n", -1).length - 1);
    assertEquals(
        csv.chars().filter(c -> c == '\n').count(), csv.chars().filter(c -> c == '\r').count());
  }

  @Test
  void aNameThatASpreadsheetWouldRunIsMadeText() throws IOException {
    ForestRow row =
        new ForestRow(
            "=HYPERLINK(\"x\"), 2020",
            "",
            new Span.NotReported(),
            "",
            Estimate.of(.5, .2, .8),
            OptionalDouble.empty(),
            ForestRow.OpenEnd.NONE,
            Optional.empty());
    Forest forest =
        new Forest(
            FOREST.heading(),
            FOREST.measure(),
            FOREST.axis(),
            List.of(
                new Block("", List.of(row), new ForestSummary.NotPooled("Not pooled", "One only"))),
            Optional.empty(),
            List.of(),
            List.of(),
            List.of(),
            FOREST.provenance());
    assertEquals("'=HYPERLINK(\"x\"), 2020", records(forest).get(0).get("label"));
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '"',
      value = {
        "=1+1, '=1+1",
        "@SUM(1), '@SUM(1)",
        "+5 (1 to 9), '+5 (1 to 9)",
        "-1+1, '-1+1",
        "-4.5, -4.5",
        "a=b, a=b"
      })
  void wordsThatASpreadsheetWouldRunAreMadeTextAndNumbersBelowZeroStay(
      String words, String written) {
    assertEquals(written, CsvCell.text(words));
  }

  @Test
  void aFigureWithoutSeriesStillHasItsLines() throws IOException {
    List<CSVRecord> records = records(InventedForests.oneSeriesAndAnEmptyBlock());
    assertEquals(3, records.size());
    assertEquals("Nothing was found for this method.", records.get(2).get("detail"));
  }
}
