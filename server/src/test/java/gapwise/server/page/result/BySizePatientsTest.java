package gapwise.server.page.result;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.Arm;
import gapwise.evidence.Baseline;
import gapwise.evidence.Citation;
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
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Patients described one by one on the page of an outcome by size. */
class BySizePatientsTest {
  @TempDir static Path folder;
  private static RunningServer running;

  @BeforeAll
  static void open() {
    List<Study> studies = new ArrayList<>(Invented.studies());
    studies.add(described());
    running = RunningServer.with(folder.resolve("home"), studies);
  }

  @AfterAll
  static void close() {
    running.close();
  }

  private static PatientRow patient(int number, double centimetres, YesOrNo united) {
    Map<String, PatientOutcome> outcomes =
        Map.of(
            "union",
            new PatientOutcome.Happened(united),
            "time-to-union",
            new PatientOutcome.Measured(6 + number, Unit.MONTHS));
    return PatientRow.with("case " + number, "A")
        .defect(new Length(centimetres, Unit.CENTIMETRES, false))
        .outcomes(new TreeMap<>(outcomes))
        .build();
  }

  /** Seven patients, of one of whom union is unclear, two alike. */
  private static Study described() {
    Arm arm =
        Arm.with("A", MethodUsed.of(Method.of("bone-transport")))
            .baseline(Baseline.with().patients(7).build())
            .build();
    return Study.with("invented-described", Citation.with("Invented cases").year(2019).build())
        .invented(true)
        .arms(List.of(arm))
        .outcomes(
            List.of(
                OutcomeReport.with(
                        new Scope.OneArm("A"),
                        Outcome.of("union"),
                        new ReportedValue.Events(EventCount.of(5, 6)))
                    .build()))
        .patients(
            List.of(
                patient(1, 3, YesOrNo.YES),
                patient(2, 3, YesOrNo.YES),
                patient(3, 5, YesOrNo.YES),
                patient(4, 6, YesOrNo.NO),
                patient(5, 8, YesOrNo.YES),
                patient(6, 9, YesOrNo.YES),
                patient(7, 10, YesOrNo.UNCLEAR)))
        .build();
  }

  private static int count(String text, String regex) {
    return (int) Pattern.compile(regex).matcher(text).results().count();
  }

  private static String table(String page) {
    int from = page.indexOf("id=\"single-patients\"");
    return page.substring(from, page.indexOf("</table>", from));
  }

  @Test
  void patientsWithALengthAndAKnownOutcomeAreMarkedAndListed() throws Exception {
    String page = running.get("/by-size?outcome=union").body();
    String table = table(page);
    assertEquals(5, count(table, "<td>yes</td>"), table);
    assertEquals(1, count(table, "<td>no</td>"), table);
    assertTrue(page.contains("one patient: at the top with it, at the foot without"));
    assertTrue(page.contains("The line does not run through them"));
  }

  @Test
  void twoPatientsAlikeAreTwoMarksAndTheSameFigureIsTheSameText() throws Exception {
    String svg = running.get("/api/v1/by-size.svg?outcome=union").body();
    int from = svg.indexOf("data-part=\"patients\"");
    String marks = svg.substring(from, svg.indexOf("</g>", from));
    List<String> places =
        Pattern.compile("M[^Mv]*v").matcher(marks).results().map(one -> one.group()).toList();
    assertEquals(6, places.size(), marks);
    assertEquals(6, places.stream().distinct().count(), marks);
    assertEquals(svg, running.get("/api/v1/by-size.svg?outcome=union").body());
  }

  @Test
  void aRangeAskedForHoldsForPatientsToo() throws Exception {
    String table = table(running.get("/by-size?outcome=union&from=3&to=8").body());
    assertEquals(4, count(table, "<td>yes</td>"), table);
    assertEquals(1, count(table, "<td>no</td>"), table);
  }

  @Test
  void theFileTellsPatientsApartFromSeries() throws Exception {
    String csv = running.get("/api/v1/by-size.csv?outcome=union").body();
    assertEquals(6, csv.lines().filter(line -> line.startsWith("patient,")).count(), csv);
    assertEquals(17, csv.lines().filter(line -> line.startsWith("series,")).count(), csv);
  }

  @Test
  void timesOfPatientsWithoutAClockStandBesideSeriesOnOneWithACautionAndComeOff() throws Exception {
    String page = running.get("/by-size?outcome=time-to-union").body();
    assertTrue(page.contains("single-patients"), page);
    assertTrue(page.contains("1 of 17 groups does not say from when it counts"), page);
    String off = running.get("/by-size?outcome=time-to-union&unstated-clock=leave-out").body();
    assertFalse(off.contains("single-patients"), off);
    assertFalse(off.contains("The line does not run through them"), off);
  }
}
