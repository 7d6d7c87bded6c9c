package gapwise.analysis.patients;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.Runner;
import gapwise.analysis.testing.Plans;
import gapwise.analysis.testing.PublishedChecks;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Patients and summaries in one likelihood, through the plan's door. */
class PatientsWithSummariesTest {
  private static JsonNode onFiles(String fields) throws URISyntaxException {
    Path folder =
        Path.of(PatientsWithSummariesTest.class.getResource("/patients-with-summaries").toURI());
    String plan =
        "{'task':'patients-with-summaries','source':{'table':'patients.csv'}" + fields + "}";
    return Runner.withoutEvidence().run(plan.replace('\'', '"'), Optional.of(folder)).json();
  }

  private static ObjectNode plan(ArrayNode patients, ArrayNode arms, String measure) {
    ObjectNode plan = Plans.on(patients, "task", "patients-with-summaries", "measure", measure);
    if (!arms.isEmpty()) {
      plan.putObject("summaries").set("rows", arms);
    }
    return plan;
  }

  private static void row(ArrayNode rows, String study, Object... cells) {
    Plans.row(rows, cells);
    ((ObjectNode) rows.get(rows.size() - 1)).put("study", study);
  }

  private static double at(JsonNode result, String place) {
    JsonNode found = PublishedChecks.at(result, place);
    assertTrue(found.isNumber(), () -> "no number at " + place + " in " + result);
    return found.asDouble();
  }

  private static double estimate(JsonNode result, String term) {
    return at(result, "patients.coefficients[term=" + term + "].estimate");
  }

  private static double error(JsonNode result, String term) {
    return at(result, "patients.coefficients[term=" + term + "].standardError");
  }

  private static void agrees(JsonNode result, double tolerance, double... values) {
    List<String> terms = List.of("intercept", "within", "across", "difference");
    for (int i = 0; i < 4; i++) {
      assertEquals(values[i], estimate(result, terms.get(i)), tolerance, terms.get(i));
      assertEquals(values[4 + i], error(result, terms.get(i)), tolerance, terms.get(i));
    }
    assertEquals(values[8], at(result, "patients.tauSquared"), tolerance);
  }

  @Test
  void eventsAgreeWithAGeneralMixedModelLibrary() throws URISyntaxException {
    // lme4 1.1-31, glmer with 25 points: core/src/test/reference/patients_with_summaries.R. It
    // takes
    // second derivatives by differences, so its standard errors hold to some 1e-6; its
    // coefficients differ by 3e-7 between builds of its libraries.
    JsonNode patients = onFiles("");
    agrees(
        patients,
        2e-6,
        -0.3867994517,
        -0.7185221128,
        0.4778355609,
        1.1963576737,
        1.0759644761,
        0.295957198,
        0.228273616,
        0.3954309089,
        0);
    assertEquals(-29.4902917218, at(patients, "fit.logLikelihood"), 1e-8);
    JsonNode both = onFiles(",'summaries':{'table':'arms.csv'}");
    agrees(
        both,
        2e-6,
        1.56314776691,
        -0.65604689356,
        0.04094994899,
        0.69699684254,
        1.00252547754,
        0.27298557895,
        0.18483362253,
        0.33516025771,
        0.44285865181);
    // glmer's value is relative to the observed proportions of the arms, whose own log likelihood
    // (base R, dbinom) is added here.
    assertEquals(-35.03177580081 - 5.09698037, at(both, "fit.logLikelihood"), 1e-7);
    assertEquals(3, at(both, "patients.studiesWithSummariesOnly"));
    assertEquals(8, at(both, "patients.studiesWithPatients"));
    assertEquals(82, at(both, "patients.patients"));
  }

  @Test
  void measurementsAgreeWithAGeneralMixedModelLibrary() throws URISyntaxException {
    // lme4 1.1-31, lmer: core/src/test/reference/patients_with_summaries.R.
    JsonNode restricted = onFiles(",'measure':'mean','scale':'log'");
    agrees(
        restricted,
        1e-7,
        1.46113324620,
        0.11149117448,
        0.06048453116,
        -0.05100664333,
        0.20645144037,
        0.01897003681,
        0.0374223909,
        0.0419559011,
        0.02962304447);
    assertEquals(0.04967754, at(restricted, "patients.residualVariance"), 5e-9);
    assertEquals(-6.71221170862, at(restricted, "fit.logLikelihood"), 1e-9);
    JsonNode full =
        onFiles(",'measure':'mean','scale':'log','betweenStudyVariance':'maximum-likelihood'");
    agrees(
        full,
        1e-7,
        1.46079576463,
        0.11149117448,
        0.06083043207,
        -0.05066074241,
        0.18009723277,
        0.01883001102,
        0.03266705311,
        0.03770551252,
        0.02134097519);
    assertEquals(0.64745539115, at(full, "fit.logLikelihood"), 1e-9);
  }

  @Test
  void patientsWhoAreAllAlikeAreWhatTheirSummaryIs() {
    Random random = new Random(3);
    ArrayNode patients = Plans.rows();
    ArrayNode asPatients = Plans.rows();
    ArrayNode arms = Plans.rows();
    for (int s = 0; s < 6; s++) {
      int events = 0;
      for (int i = 0; i < 9; i++) {
        int event = random.nextInt(3) > 0 ? 1 : 0;
        events += event;
        row(asPatients, "arm " + s, "event", event, "moderator", s);
      }
      row(arms, "arm " + s, "events", events, "total", 9, "moderator", s, "moderatorSd", 0);
    }
    for (int i = 0; i < 12; i++) {
      row(patients, "P", "event", i % 3 == 0 ? 0 : 1, "moderator", 2 + i % 4);
      row(asPatients, "P", "event", i % 3 == 0 ? 0 : 1, "moderator", 2 + i % 4);
    }
    JsonNode summaries = Plans.result(plan(patients, arms, "proportion"));
    JsonNode all = Plans.result(plan(asPatients, Plans.rows(), "proportion"));
    for (String term : List.of("intercept", "within", "across", "difference")) {
      assertEquals(estimate(all, term), estimate(summaries, term), 1e-6, term);
      assertEquals(error(all, term), error(summaries, term), 1e-6, term);
    }
  }

  @ParameterizedTest
  @CsvSource({"11, proportion", "12, proportion", "13, mean", "14, mean"})
  void ecologicalBiasThatIsPutInIsFoundAndSlopesAreRecovered(long seed, String measure) {
    Random random = new Random(seed);
    ArrayNode patients = Plans.rows();
    ArrayNode arms = Plans.rows();
    boolean events = measure.equals("proportion");
    for (int s = 0; s < 90; s++) {
      double middle = 6 + 2 * random.nextGaussian();
      double own = 0.5 * random.nextGaussian();
      int n = 30;
      double sum = 0;
      double squares = 0;
      double lengths = 0;
      double[] x = new double[n];
      for (int i = 0; i < n; i++) {
        x[i] = middle + 1.5 * random.nextGaussian();
        lengths += x[i] / n;
      }
      double spread = 0;
      for (int i = 0; i < n; i++) {
        double line = 0.5 - 0.4 * (x[i] - lengths) + 0.3 * (lengths - 6) + own;
        double y =
            events
                ? (random.nextDouble() < 1 / (1 + Math.exp(-line)) ? 1 : 0)
                : line + random.nextGaussian();
        sum += y;
        squares += y * y;
        spread += (x[i] - lengths) * (x[i] - lengths) / (n - 1);
        if (s < 45) {
          row(patients, "S" + s, events ? "event" : "value", y, "moderator", x[i]);
        }
      }
      if (s >= 45 && events) {
        row(
            arms,
            "S" + s,
            "events",
            sum,
            "total",
            n,
            "moderator",
            lengths,
            "moderatorSd",
            Math.sqrt(spread));
      } else if (s >= 45) {
        double sd = Math.sqrt((squares - sum * sum / n) / (n - 1));
        row(arms, "S" + s, "mean", sum / n, "sd", sd, "n", n, "moderator", lengths);
      }
    }
    ObjectNode plan = plan(patients, arms, measure).put("centre", 6);
    JsonNode result = Plans.result(plan);
    recovered(result, "intercept", 0.5);
    recovered(result, "within", -0.4);
    recovered(result, "across", 0.3);
    recovered(result, "difference", 0.7);
    assertTrue(at(result, "patients.coefficients[term=difference].lower") > 0.3);
    assertEquals(0.25, at(result, "patients.tauSquared"), 0.15);
  }

  /** Within three standard errors, which a right method misses once in 370 draws. */
  private static void recovered(JsonNode result, String term, double truth) {
    assertEquals(truth, estimate(result, term), 3 * error(result, term), term);
  }

  @Test
  void whatCannotBeToldIsLeftOutAndSaid() {
    ArrayNode patients = Plans.rows();
    for (int i = 0; i < 12; i++) {
      row(patients, "S" + i % 3, "event", i % 2, "moderator", i % 3);
    }
    JsonNode constant = Plans.result(plan(patients, Plans.rows(), "proportion"));
    assertTrue(Plans.warnings(constant).contains("no-variation"));
    assertEquals(2, constant.at("/patients/coefficients").size());
    ArrayNode one = Plans.rows();
    for (int i = 0; i < 12; i++) {
      row(one, "S", "event", i % 2, "moderator", i % 5);
    }
    JsonNode single = Plans.result(plan(one, Plans.rows(), "proportion"));
    assertTrue(Plans.warnings(single).containsAll(List.of("too-few-studies", "single-study")));
    estimate(single, "within");
    ArrayNode parted = Plans.rows();
    for (int i = 0; i < 12; i++) {
      row(parted, "S" + i % 3, "event", i < 6 ? 0 : 1, "moderator", i);
    }
    JsonNode separated = Plans.result(plan(parted, Plans.rows(), "proportion"));
    assertTrue(Plans.warnings(separated).contains("separation"), separated.toString());
    assertEquals(0, separated.at("/patients/coefficients").size());
    ArrayNode none = Plans.rows();
    row(none, "S1", "event", 0, "moderator", 1);
    assertTrue(
        Plans.warnings(Plans.result(plan(none, Plans.rows(), "proportion"))).contains("no-events"));
  }

  @Test
  void summariesAloneGiveOnlyTheSlopeAcross() {
    ArrayNode patients = Plans.rows();
    row(patients, "S0", "event", 1);
    ((ObjectNode) patients.get(0)).put("moderator", "");
    ArrayNode arms = Plans.rows();
    for (int i = 0; i < 6; i++) {
      row(arms, "A" + i, "events", 3 + i, "total", 12, "moderator", i);
    }
    JsonNode result = Plans.result(plan(patients, arms, "proportion"));
    assertTrue(
        Plans.warnings(result)
            .containsAll(List.of("no-patients", "missing-value", "spread-within-arm-ignored")));
    assertEquals(2, result.at("/patients/coefficients").size());
    assertTrue(estimate(result, "across") > 0);
  }

  @Test
  void wrongCellsAreToldWithTheirTable() {
    ArrayNode patients = Plans.rows();
    row(patients, "S", "event", 0.5, "moderator", 1);
    ArrayNode arms = Plans.rows();
    row(arms, "A", "events", 13, "total", 12, "moderator", 1);
    assertEquals(
        List.of(
            "row 1, column event not-an-event",
            "summaries, row 1, column events events-exceed-total"),
        Plans.problems(plan(patients, arms, "proportion")));
    assertEquals(
        List.of("scale scale-not-for-measure"),
        Plans.problems(plan(patients, arms, "proportion").put("scale", "log")));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
  void extremesGiveFiniteNumbersOrWarnings(long seed) {
    Random random = new Random(seed);
    for (int example = 0; example < 12; example++) {
      boolean events = random.nextBoolean();
      ArrayNode patients = Plans.rows();
      ArrayNode arms = Plans.rows();
      double size = Math.pow(10, random.nextInt(20) - 10);
      int k = 1 + random.nextInt(12);
      for (int i = 0; i < k; i++) {
        double x = random.nextInt(3) * size;
        if (events) {
          row(patients, "S" + random.nextInt(4), "event", random.nextInt(2), "moderator", x);
        } else {
          row(patients, "S" + random.nextInt(4), "value", random.nextInt(3) * size, "moderator", x);
        }
      }
      for (int i = 0; i < random.nextInt(4); i++) {
        int n = random.nextInt(3) == 0 ? 1_000_000 : 5;
        double x = random.nextInt(3) * size;
        if (events) {
          row(
              arms,
              "S" + i,
              "events",
              random.nextInt(n + 1),
              "total",
              n,
              "moderator",
              x,
              "moderatorSd",
              random.nextInt(2) * size);
        } else {
          row(arms, "S" + i, "mean", x, "sd", size, "n", n, "moderator", x);
        }
      }
      ObjectNode plan = plan(patients, arms, events ? "proportion" : "mean");
      JsonNode result = Plans.result(plan);
      assertTrue(
          result.at("/patients/coefficients").size() > 0 || result.get("warnings").size() > 0);
      assertEquals(result.toString(), Plans.result(result.get("plan")).toString());
    }
  }
}
