package gapwise.server.page.part;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Citation;
import gapwise.evidence.EventCount;
import gapwise.evidence.KeptApart;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.ApartReason;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.ReadAs;
import gapwise.server.testing.RunningServer;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What papers leave unsaid, or say of all groups or of the other side, on pages; all invented. */
class SilenceAndSidesTest {
  private static final MethodUsed MEMBRANE = MethodUsed.of(Method.of("induced-membrane"));
  private static final String TIMES = "?outcome=time-to-union";

  @TempDir static Path folder;
  private static RunningServer running;

  @BeforeAll
  static void open() {
    running =
        RunningServer.with(
            folder.resolve("home"),
            List.of(
                study("stated", months(8, Optional.of(Clock.INJURY))),
                study("silent-1", months(7, Optional.empty())),
                study("silent-2", months(9, Optional.empty())),
                study("turned", events(new Scope.OneArm("A"), "nonunion", 3)),
                study("plain", events(new Scope.OneArm("A"), "union", 18)),
                together(),
                apart()));
  }

  @AfterAll
  static void close() {
    running.close();
  }

  private static OutcomeReport months(double mean, Optional<Clock> clock) {
    OutcomeReport.Builder report =
        OutcomeReport.with(
            new Scope.OneArm("A"),
            Outcome.of("time-to-union"),
            new ReportedValue.Quantity(
                QuantitySummary.with(Unit.MONTHS).n(20).mean(mean).standardDeviation(2).build()));
    clock.ifPresent(report::clock);
    return report.build();
  }

  private static OutcomeReport events(Scope scope, String outcome, int events) {
    return OutcomeReport.with(
            scope, Outcome.of(outcome), new ReportedValue.Events(EventCount.of(events, 20)))
        .build();
  }

  private static Arm arm(String id) {
    return Arm.with(id, MEMBRANE).baseline(Baseline.with().patients(20).build()).build();
  }

  private static Study study(String id, OutcomeReport report) {
    return Study.with(id, Citation.with("Paper " + id).firstAuthor(id).year(2015).build())
        .invented(true)
        .arms(List.of(arm("A")))
        .outcomes(List.of(report))
        .build();
  }

  private static Study together() {
    return study("together", events(new Scope.AllArms(), "union", 16))
        .but()
        .arms(List.of(arm("A"), arm("B")))
        .build();
  }

  private static Study apart() {
    KeptApart why =
        new KeptApart(ApartReason.SELECTED_ON_OUTCOME, Optional.of("those in whom it failed"));
    return study("apart", events(new Scope.OneArm("A"), "union", 2))
        .but()
        .arms(List.of(arm("A").but().keptApart(why).build()))
        .readAs(ReadAs.SECOND_HAND)
        .readAt("https://example.org/read-here")
        .overlapSuspectedWith(List.of("plain"))
        .build();
  }

  private static String page(String address) throws Exception {
    HttpResponse<String> answer = running.get(address);
    assertEquals(200, answer.statusCode(), answer.body());
    return answer.body();
  }

  private static JsonNode result(String address) throws Exception {
    return JsonMapper.builder().build().readTree(page("/api/v1/result.json" + address));
  }

  @Test
  void groupsThatDoNotSayTheirClockAreTakenWithACautionAndComeOffAtOneClick() throws Exception {
    for (String path : List.of("/pooled", "/by-size")) {
      String page = page(path + TIMES);
      assertTrue(page.contains("2 of 3 groups do not say from when they count"), page);
      String off = path + TIMES + "&amp;unstated-clock=leave-out";
      assertTrue(page.contains("href=\"" + off + "\">Take only groups that say it</a>"), page);
    }
    assertEquals(3, result(TIMES).at("/data/studies").asInt());
    String off = TIMES + "&unstated-clock=leave-out";
    assertEquals(1, result(off).at("/data/studies").asInt());
    assertEquals("leave-out", result(off).at("/plan/source/evidence/unstatedClock").asText());
    String page = page("/pooled" + off);
    assertTrue(page.contains("only groups that say from when they count"), page);
    assertTrue(page.contains("2 values do not say from when they are counted"), page);
    assertTrue(page.contains(">Take them too</a>"), page);
    assertTrue(
        page.contains("<input type=\"hidden\" name=\"unstated-clock\" value=\"leave-out\">"), page);
  }

  @Test
  void aRuleThatIsNoneIsRefusedWithThoseThereAre() throws Exception {
    for (String path :
        List.of(
            "/pooled" + TIMES,
            "/claim?a=bone-transport&b=autograft&says=more&outcome=time-to-union")) {
      HttpResponse<String> answer = running.get(path + "&unstated-clock=perhaps");
      assertEquals(422, answer.statusCode());
      assertTrue(answer.body().contains("keep, leave-out"), answer.body());
    }
  }

  @Test
  void pooledUnionTakesTheOtherSideAndTheValueOfAllGroupsAndNeverTheGroupKeptApart()
      throws Exception {
    String page = page("/pooled?outcome=union");
    assertTrue(page.contains("from its other side: 3 of 20 not united"), page);
    assertTrue(page.contains("together 2015, all groups together"), page);
    assertTrue(page.contains("kept apart and never pooled: chosen by what became of them"), page);
    List<String> studies =
        Stream.of(0, 1, 2).map(i -> "/studies/" + i + "/label").map(this::label).toList();
    assertEquals(
        List.of("plain 2015", "together 2015, all groups together", "turned 2015"), studies);
  }

  private String label(String place) {
    try {
      return result("?outcome=union").at(place).asText();
    } catch (Exception e) {
      throw new AssertionError(e);
    }
  }

  @Test
  void theListShowsTheSameGroupsWithTheirValues() throws Exception {
    String page = page("/studies?outcome=union");
    for (String id : List.of("turned", "plain", "together", "apart")) {
      assertTrue(page.contains("href=\"/studies/" + id + "\""), id);
    }
    assertFalse(page.contains("href=\"/studies/stated\""), page);
    assertTrue(page.contains("from its other side: 3 of 20 not united"), page);
    assertTrue(page.contains("of all groups of the paper together"), page);
    assertTrue(page.contains("kept apart, never pooled"), page);
    assertTrue(page.contains("2 of 20"), page);
  }

  @Test
  void theStudyPageSaysThatAGroupIsKeptApartWhatWasReadAndWithWhomItMayOverlap() throws Exception {
    String page = page("/studies/apart");
    assertTrue(page.contains("Kept apart, never pooled"), page);
    assertTrue(page.contains("chosen by what became of them: those in whom it failed"), page);
    assertTrue(page.contains("another paper that tells of it"), page);
    assertTrue(page.contains("https://example.org/read-here"), page);
    assertTrue(page.contains("May share patients with"), page);
  }
}
