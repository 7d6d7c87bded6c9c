package gapwise.server.page.map;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Citation;
import gapwise.evidence.DefectLength;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.QuantitySummary;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.Method;
import gapwise.server.testing.RunningServer;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MapPageTest {
  private static final Pattern PLACE =
      Pattern.compile("<a href=\"(/studies[^\"]*)\"><strong>(\\d+) stud");

  @TempDir static Path folder;
  private static RunningServer running;

  @BeforeAll
  static void open() throws Exception {
    running =
        RunningServer.with(
            folder.resolve("home"),
            List.of(
                study("one", Design.RETROSPECTIVE_SERIES, arm("A", "bone-transport", 10, of(6))),
                study("two", Design.RETROSPECTIVE_SERIES, arm("A", "bone-transport", 7, of(5))),
                study(
                    "three",
                    Design.RANDOMISED,
                    arm("A", "bone-transport", 20, of(6.5)),
                    arm("B", "induced-membrane", 22, of(7))),
                study(
                    "four",
                    Design.CASE_REPORT,
                    arm("A", "printed-scaffold", 1, OptionalDouble.empty()))));
  }

  @AfterAll
  static void close() {
    running.close();
  }

  private static OptionalDouble of(double centimetres) {
    return OptionalDouble.of(centimetres);
  }

  private static Arm arm(String id, String method, int patients, OptionalDouble mean) {
    Baseline.Builder baseline = Baseline.with().patients(patients);
    mean.ifPresent(
        cm ->
            baseline.defect(
                DefectLength.of(QuantitySummary.with(Unit.CENTIMETRES).mean(cm).build())));
    return Arm.with(id, MethodUsed.of(Method.of(method))).baseline(baseline.build()).build();
  }

  private static Study study(String id, Design design, Arm... arms) {
    return Study.with(id, Citation.with("Invented " + id).firstAuthor("Loam").year(2019).build())
        .design(design)
        .invented(true)
        .arms(List.of(arms))
        .build();
  }

  private static String page(String path) throws Exception {
    HttpResponse<String> answer = running.get(path);
    assertEquals(200, answer.statusCode(), answer.body());
    return answer.body();
  }

  @Test
  void everyPlaceLeadsToAsManyStudiesAsItSays() throws Exception {
    Matcher places = PLACE.matcher(page("/map"));
    int seen = 0;
    while (places.find()) {
      seen++;
      String studies = page(places.group(1).replace("&amp;", "&"));
      String expected =
          " in " + places.group(2) + (places.group(2).equals("1") ? " study," : " stud");
      assertTrue(studies.contains(expected), places.group());
    }
    // transport: 4 to 6, 6 to 8, all; membrane: 6 to 8, all; scaffold: no middle, all; four totals
    assertEquals(11, seen);
  }

  @Test
  void aGroupOfExactlySixCentimetresStandsInOneBandOnly() throws Exception {
    String csv = page("/map.csv?method=bone-transport");
    assertTrue(csv.contains("bone-transport,band,4,6,1,1,7,0,0,0,0,0,0,1,0,0,0,0\r\n"), csv);
    assertTrue(csv.contains("bone-transport,band,6,8,2,2,30,1,0,0,0,0,0,1,0,0,0,0\r\n"), csv);
    assertTrue(csv.contains("bone-transport,band,8,12,0,0,0,0,0,0,0,0,0,0,0,0,0,0\r\n"), csv);
  }

  @Test
  void theBestDesignOfAPlaceIsMarkedInTheText() throws Exception {
    assertTrue(
        page("/map").contains("<b>1 randomised trial</b><span class=\"others\">, 1 series</span>"));
  }

  @Test
  void theFirstSentenceNamesTheEmptiestQuestionAndClaimsNothingOfTheWorld() throws Exception {
    String page = page("/map");
    // 22 patients of the membrane by 7 of 59 patients at 4 to 6 cm: the largest expectation
    assertTrue(
        page.contains("Induced membrane: no study here at a mean or median below 6 cm."), page);
    assertTrue(page.contains("It does not mean that nothing was ever published"));
  }

  @Test
  void theMapOfAnOutcomeThatNobodyReportsIsEmptyAndSaysSo() throws Exception {
    String page = page("/map?outcome=union");
    assertTrue(page.contains("18 of the 18 places of this map are empty"), page);
    assertFalse(PLACE.matcher(page).find());
  }

  @Test
  void onlyMethodsWithinOneStudyAreAPair() throws Exception {
    String page = page("/map?view=comparisons");
    assertTrue(page.contains("1 study holds groups treated by different methods"), page);
    assertTrue(page.contains("Of the 3 pairs of methods that are told apart here, 1 stands"));
    assertTrue(page.contains("data-head=\"Patients of both\">42 patients</td>"));
    String csv = page("/map/comparisons.csv");
    assertTrue(csv.contains("Bone transport,Induced membrane,,1"), csv);
    assertTrue(page("/map/comparisons.svg").contains("Bone transport against Induced membrane"));
  }

  @Test
  void aGraphOfNothingIsRefusedWithTheReason() throws Exception {
    HttpResponse<String> answer = running.get("/map/comparisons.svg?method=printed-scaffold");
    assertEquals(422, answer.statusCode());
    assertTrue(answer.body().contains("No study here holds two methods"));
  }

  @Test
  void anUnknownOutcomeIsToldAsOnEveryPage() throws Exception {
    assertEquals(422, running.get("/map?outcome=magic").statusCode());
  }

  @Test
  void anEmptyBaseHasNoMap(@TempDir Path other) throws Exception {
    try (RunningServer empty = RunningServer.empty(other)) {
      assertTrue(empty.get("/map").body().contains("There is no study here yet"));
      assertEquals(200, empty.get("/map?view=comparisons").statusCode());
    }
  }
}
