package gapwise.server.page.result;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Citation;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.QuantitySummaryBuilder;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.server.testing.RunningServer;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Numbers worked out, and counts in two forms, on pages and in files. All series are invented. */
class WorkedOutNumbersTest {
  private static final String FRAME = "?outcome=external-fixation-time&method=bone-transport";
  private static final String COMPLICATIONS = "?outcome=complications";

  @TempDir private static Path folder;
  private static RunningServer running;

  @BeforeAll
  static void open() {
    running =
        RunningServer.with(
            folder,
            List.of(
                study("a", frame(months().n(20).mean(8).standardDeviation(2)), tally(15, 28)),
                study("b", frame(months().n(20).mean(9).standardDeviation(3)), tally(9, 20)),
                study("c", frame(months().n(25).mean(10).minimum(4).maximum(19)), means(0.7)),
                study("d", frame(months().n(10).mean(12)), tally(0, 12))));
  }

  @AfterAll
  static void close() {
    running.close();
  }

  private static QuantitySummaryBuilder months() {
    return QuantitySummary.with(Unit.MONTHS);
  }

  private static OutcomeReport frame(QuantitySummaryBuilder months) {
    return report("external-fixation-time", new ReportedValue.Quantity(months.build()));
  }

  private static OutcomeReport tally(int events, int among) {
    return report("complications", new ReportedValue.Tally(events, OptionalInt.of(among)));
  }

  private static OutcomeReport means(double mean) {
    return report(
        "complications",
        new ReportedValue.Quantity(
            QuantitySummary.with(Unit.PER_PATIENT)
                .n(20)
                .mean(mean)
                .standardDeviation(0.9)
                .build()));
  }

  private static OutcomeReport report(String outcome, ReportedValue value) {
    return OutcomeReport.with(new Scope.OneArm("A"), Outcome.of(outcome), value).build();
  }

  private static Study study(String id, OutcomeReport... reports) {
    return Study.with(id, Citation.with("Invented " + id).firstAuthor(id).year(2018).build())
        .invented(true)
        .arms(
            List.of(
                Arm.with("A", MethodUsed.of(Method.of("bone-transport")))
                    .baseline(Baseline.with().patients(30).build())
                    .build()))
        .outcomes(List.of(reports))
        .build();
  }

  private static String get(String path) throws Exception {
    HttpResponse<String> answer = running.get(path);
    assertEquals(200, answer.statusCode(), answer.body());
    return answer.body();
  }

  private static JsonNode json(String path) throws Exception {
    return new JsonMapper().readTree(get(path));
  }

  @Test
  void oneClickTakesOnlyPrintedDeviationsAndOneTakesThatBack() throws Exception {
    String page = get("/pooled" + FRAME);
    assertTrue(page.contains("1 series prints a mean without a standard deviation"), page);
    assertTrue(page.contains("conversions=none"), page);
    assertTrue(page.contains("SD from the range"), page);
    String printed = get("/pooled" + FRAME + "&conversions=none");
    assertTrue(printed.contains("From 2 series with 40 patients."), printed);
    assertTrue(printed.contains("nothing worked out"), printed);
    assertFalse(printed.contains("SD from the range"), printed);
    assertTrue(printed.contains("only standard deviations as printed"), printed);
  }

  @Test
  void pageFigureFileAndApiSayWhatAllSeriesReport() throws Exception {
    String sentence = "4 series report means from 8.0 to 12.0 months";
    assertTrue(get("/pooled" + FRAME).contains(sentence));
    assertTrue(get("/api/v1/forest.svg" + FRAME).contains("4 series report means"));
    assertTrue(get("/api/v1/forest.csv" + FRAME).contains(sentence));
    JsonNode reported = json("/api/v1/result.json" + FRAME).at("/data/reported/0");
    assertEquals(4, reported.path("series").asInt());
    assertEquals(12, reported.path("highest").asDouble());
  }

  @Test
  void thePlanOfAnAddressHoldsItsConversionsAndItsFormOfCounting() throws Exception {
    assertEquals(
        "none",
        json("/api/v1/plan.json" + FRAME + "&conversions=none")
            .at("/source/evidence/conversions")
            .asText());
    JsonNode plan = json("/api/v1/plan.json" + COMPLICATIONS);
    assertEquals("incidence-rate", plan.path("measure").asText());
    assertEquals("events", plan.at("/source/evidence/countedAs").asText());
    JsonNode result = json("/api/v1/result.json" + COMPLICATIONS);
    assertTrue(result.at("/summary/shown/estimate").isNumber(), result::toString);
  }

  @Test
  void sumsOfEventsAndMeansForEachPatientArePooledApartAndOneClickTakesTheOther() throws Exception {
    String page = get("/pooled" + COMPLICATIONS);
    assertTrue(page.contains("24 events in 60 patients, in 3 series; no average is given"), page);
    assertTrue(page.contains("3 series give a sum of events among patients, 1 gives a mean"), page);
    assertTrue(page.contains("counted=means"), page);
    assertTrue(page.contains("15 in 28"), page);
    String means = get("/pooled" + COMPLICATIONS + "&counted=means");
    assertTrue(means.contains("in the one series there is"), means);
    assertTrue(means.contains("counted=events"), means);
    for (String path : List.of("/funnel", "/by-size")) {
      assertEquals(200, running.get(path + COMPLICATIONS).statusCode(), path);
    }
  }

  @Test
  void aWordThatIsNoneIsRefusedByItsName() throws Exception {
    HttpResponse<String> conversions =
        running.get("/api/v1/result.json" + FRAME + "&conversions=x");
    assertEquals(422, conversions.statusCode());
    assertTrue(conversions.body().contains("all, none"), conversions.body());
    HttpResponse<String> counted = running.get("/pooled" + COMPLICATIONS + "&counted=x");
    assertEquals(422, counted.statusCode());
    assertTrue(counted.body().contains("means, events"), counted.body());
  }
}
