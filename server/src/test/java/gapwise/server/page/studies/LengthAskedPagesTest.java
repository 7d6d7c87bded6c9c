package gapwise.server.page.studies;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Citation;
import gapwise.evidence.DefectLength;
import gapwise.evidence.EventCount;
import gapwise.evidence.MethodUsed;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.PatientOutcome;
import gapwise.evidence.PatientRow;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Scope;
import gapwise.evidence.Study;
import gapwise.evidence.unit.Length;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.server.testing.Invented;
import gapwise.server.testing.RunningServer;
import java.net.http.HttpClient;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A length asked for, on pages, in files and through the API. */
class LengthAskedPagesTest {
  private static final String LONG = "outcome=union&from=30&to=40";

  @TempDir static Path folder;
  private static RunningServer running;

  @BeforeAll
  static void open() {
    List<Study> studies = new ArrayList<>(Invented.studies());
    DefectLength overFour =
        new DefectLength(
            Optional.empty(),
            OptionalDouble.of(4),
            List.of(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty());
    studies.add(study("over", Baseline.with().patients(12).defect(overFour).build(), 9, List.of()));
    studies.add(study("silent", Baseline.with().patients(12).build(), 8, List.of()));
    studies.add(study("described", Baseline.with().patients(12).build(), 10, patients()));
    running = RunningServer.with(folder.resolve("home"), studies);
  }

  @AfterAll
  static void close() {
    running.close();
  }

  private static Study study(
      String name, Baseline baseline, int united, List<PatientRow> patients) {
    OutcomeReport union =
        OutcomeReport.with(
                new Scope.OneArm("A"),
                Outcome.of("union"),
                new ReportedValue.Events(EventCount.of(united, 12)))
            .build();
    return Study.with(
            "invented-" + name,
            Citation.with("Invented " + name).firstAuthor("Mere " + name).year(2020).build())
        .invented(true)
        .arms(
            List.of(
                Arm.with("A", MethodUsed.of(Method.of("bone-transport")))
                    .baseline(baseline)
                    .build()))
        .outcomes(List.of(union))
        .patients(patients)
        .build();
  }

  /** Seven of 31 to 37 cm, of whom five united, and five of 20 cm, who all did. */
  private static List<PatientRow> patients() {
    List<PatientRow> patients = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      boolean inside = i < 7;
      YesOrNo united = i < 2 ? YesOrNo.NO : YesOrNo.YES;
      patients.add(
          PatientRow.with("case " + (i + 1), "A")
              .defect(new Length(inside ? 31 + i : 20, Unit.CENTIMETRES, false))
              .outcomes(new TreeMap<>(Map.of("union", new PatientOutcome.Happened(united))))
              .build());
    }
    return patients;
  }

  private static String page(String path) throws Exception {
    return running.get(path).body();
  }

  private static JsonNode json(String path) throws Exception {
    return JsonMapper.builder().build().readTree(page(path));
  }

  @Test
  void theListCountsThePatientsInTheLengthAndSaysSo() throws Exception {
    String list = page("/studies?" + LONG);
    assertTrue(list.contains("1 group of patients in 1 study, 7 patients"), list);
    assertTrue(list.contains(">5 of 7<"), list);
    assertTrue(list.contains("only 7 of its 12 patients, those in range"), list);
    assertTrue(list.contains("7 of 12 in this length"), list);
    assertFalse(list.contains("10 of 12"), list);
  }

  @Test
  void theListCountsApartWhoGivesOneEndOrNothingAndLeadsToThem() throws Exception {
    String list = page("/studies?" + LONG);
    assertTrue(list.contains("And 1 more gives only one end of the missing bone"), list);
    assertTrue(list.contains("And 1 more does not give the missing bone in numbers"), list);
    assertFalse(list.contains("Mere over 2020"), list);
    String oneEnd = page("/studies?" + LONG + "&match=one-sided");
    assertTrue(oneEnd.contains("Mere over 2020") && oneEnd.contains(">9 of 12<"), oneEnd);
    assertFalse(oneEnd.contains("Mere silent 2020"), oneEnd);
    assertTrue(page("/studies?" + LONG + "&match=unknown").contains("Mere silent 2020"));
  }

  @Test
  void theResultCountsOnlyWhoIsInTheLengthAndNamesWhoIsLeftOut() throws Exception {
    String pooled = page("/pooled?" + LONG);
    assertTrue(pooled.contains(" of 7 patients "), pooled);
    assertTrue(pooled.contains("only 7 of its 12 patients, those in range"), pooled);
    assertTrue(pooled.contains("2 further groups report this outcome and do not say"), pooled);
    assertTrue(pooled.contains("It gives only one end of its missing bone"), pooled);
    assertTrue(pooled.contains(">Mere over 2020<") && pooled.contains(">Mere silent 2020<"));
    JsonNode result = json("/api/v1/result.json?" + LONG);
    assertEquals(1, result.at("/data/studies").asInt(), result::toString);
    List<String> codes = new ArrayList<>();
    result.get("warnings").forEach(one -> codes.add(one.get("code").asText()));
    assertTrue(codes.containsAll(List.of("length-one-sided", "length-unknown")), codes::toString);
    assertTrue(codes.contains("only-patients-in-range"), codes::toString);
  }

  @Test
  void theApiCountsThePatientsInTheLengthToo() throws Exception {
    JsonNode found = json("/api/v1/studies?" + LONG);
    assertEquals(1, found.get("groups").asInt());
    assertEquals(7, found.get("patients").asInt());
    assertEquals(7, found.at("/found/0/patientsInRange").asInt());
    assertEquals(12, found.at("/found/0/patients").asInt());
    assertEquals(1, found.at("/notCounted/oneEndOfLength").asInt());
    assertEquals(1, found.at("/notCounted/lengthNotGiven").asInt());
  }

  @Test
  void theTableOfTheListSaysHowTheLengthWasAskedFor() throws Exception {
    String csv = page("/studies.csv?" + LONG);
    assertTrue(csv.contains("(missing bone reaching into 30 to 40 cm)"), csv);
    assertTrue(csv.contains("7 of 12 in this length"), csv);
    assertTrue(
        page("/studies.csv?outcome=union&from=4&to=9&match=centre")
            .contains("(mean or median of missing bone 4 to 9 cm)"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "forest.svg",
        "forest.csv",
        "forest.png",
        "forest-citations.txt",
        "by-size.svg",
        "by-size.csv",
        "by-size.png",
        "funnel.svg",
        "funnel.csv",
        "plan.json",
        "result.json",
        "by-size-plan.json"
      })
  void everyFileTellsReachingIntoFromTheMiddleInside(String file) throws Exception {
    String query = "/api/v1/" + file + "?outcome=union&from=4&to=9";
    String reaching = "missing bone reaching into 4 to 9 cm";
    String middle = "mean or median of missing bone 4 to 9 cm";
    String overlap = text(query);
    String centre = text(query + "&match=centre");
    assertTrue(overlap.contains(reaching) && !overlap.contains(middle), file);
    assertTrue(centre.contains(middle) && !centre.contains(reaching), file);
  }

  /** Letters of text chunks stand in a picture as they are. */
  private static String text(String path) throws Exception {
    byte[] bytes =
        HttpClient.newHttpClient()
            .send(running.request(path).GET().build(), BodyHandlers.ofByteArray())
            .body();
    return new String(bytes, StandardCharsets.ISO_8859_1).replaceAll("\\s+", " ");
  }

  @Test
  void bandsBySizeAndLinesCountNobodyWhoGivesOneEndOrNothing() throws Exception {
    String bands = page("/by-size?outcome=union&cuts=6");
    assertFalse(bands.contains("Mere over 2020"), bands);
    String band = page("/by-size?outcome=union&cuts=25");
    assertTrue(
        band.contains(
            "1 series is not counted whole, but only its patients with the missing bone asked for:"
                + " Mere described 2020."),
        band);
    String csv = page("/api/v1/by-size.csv?outcome=union");
    assertFalse(csv.contains("Mere over") || csv.contains("Mere silent"), csv);
    JsonNode pooled = json("/api/v1/result.json?outcome=union&from=6&match=band");
    assertFalse(pooled.get("studies").toString().contains("Mere over"), pooled::toString);
  }

  @Test
  void aClaimOfALengthCountsNobodyWhoGivesOneEndAndSaysSo() throws Exception {
    JsonNode verdict =
        json(
            "/api/v1/claim?a=bone-transport&says=more&outcome=union&b=induced-membrane&from=6&to=9");
    assertTrue(
        verdict.get("lowersCertainty").toString().contains("2 further groups"), verdict::toString);
    assertEquals(2, verdict.at("/separate/leftOut").asInt(), verdict::toString);
  }

  /** Below the head of the column stand drawings; on a phone its name stands before words alone. */
  @Test
  void aGroupWithoutALengthHasNothingThatIsToScale() throws Exception {
    String page = page("/studies?match=unsized");
    assertTrue(page.contains("<th scope=\"col\">Missing bone, to scale</th>"), page);
    assertTrue(
        page.contains("<td data-head=\"Missing bone\"><span class=\"soft\">not stated</span>"),
        page);
  }
}
