package gapwise.analysis;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Patients one by one and summaries of arms in one likelihood.
 *
 * @param json with every default filled in; shared, so not to be changed
 * @param columns of the patients
 * @param summaryColumns of the arms
 * @param events whether the outcome is an event; else it is a measurement
 * @param logs whether logs of measurements are taken
 * @param restricted whether the likelihood is the restricted one
 * @param centre the moderator at which the intercept is told
 * @param points of the quadrature, for events
 * @param level above 0 and below 1
 */
record PatientsPlan(
    ObjectNode json,
    Map<String, String> columns,
    Map<String, String> summaryColumns,
    boolean events,
    boolean logs,
    boolean restricted,
    double centre,
    int points,
    double level)
    implements Plan {
  PatientsPlan {
    columns = Collections.unmodifiableMap(new LinkedHashMap<>(columns));
    summaryColumns = Collections.unmodifiableMap(new LinkedHashMap<>(summaryColumns));
  }

  static PatientsPlan of(ObjectNode full, Map<String, String> columns) {
    Map<String, String> summaries = new LinkedHashMap<>();
    full.path("summaries")
        .path("columns")
        .fields()
        .forEachRemaining(field -> summaries.put(field.getKey(), field.getValue().asText()));
    return new PatientsPlan(
        full,
        columns,
        summaries,
        full.get("measure").asText().equals("proportion"),
        full.get("scale").asText().equals("log"),
        full.get("betweenStudyVariance").asText().equals("restricted-maximum-likelihood"),
        full.get("centre").asDouble(),
        full.path("quadraturePoints").asInt(25),
        full.get("level").asDouble());
  }

  /** What a plan of the right form may still not ask. */
  static List<Problem> check(ObjectNode full) {
    Problems problems = new Problems();
    boolean events = full.get("measure").asText().equals("proportion");
    String scale = full.get("scale").asText();
    List<String> scales = events ? List.of("logit") : List.of("raw", "log");
    if (!scales.contains(scale)) {
      problems.add(
          "scale",
          "scale-not-for-measure",
          "'" + scale + "' is no scale for this measure here, which has " + scales);
    }
    if (events && !full.get("betweenStudyVariance").asText().equals("maximum-likelihood")) {
      problems.add(
          "betweenStudyVariance",
          "estimator-not-for-model",
          "events of patients are fitted by 'maximum-likelihood' alone");
    }
    if (full.path("summaries").has("table") == full.path("summaries").has("rows")
        && full.has("summaries")) {
      problems.add(
          "summaries",
          "wrong-source",
          "expected exactly one of \"table\" (a file) and \"rows\" (a list)");
    }
    return problems.list();
  }

  @Override
  public String measure() {
    return json.get("measure").asText();
  }

  @Override
  public Result runOn(DataTable table) {
    return new PatientsRun(this, table).run();
  }
}
