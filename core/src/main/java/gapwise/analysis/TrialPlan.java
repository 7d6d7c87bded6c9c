package gapwise.analysis;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import gapwise.synthesis.trial.Demands;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * How many patients a trial of two arms needs to find a difference.
 *
 * @param json with every default filled in; shared, so not to be changed
 * @param columns of the groups that tell how widely patients differ, if a source is named
 * @param comparator what the comparator gives, as people read it
 * @param intervention what the intervention would give
 */
record TrialPlan(
    ObjectNode json, Map<String, String> columns, double comparator, double intervention)
    implements Plan {
  TrialPlan {
    columns = Collections.unmodifiableMap(new LinkedHashMap<>(columns));
  }

  static TrialPlan of(ObjectNode full, Map<String, String> columns) {
    return new TrialPlan(
        full, columns, full.get("comparator").asDouble(), full.get("intervention").asDouble());
  }

  /** What a plan of the right form may still not ask. */
  static List<Problem> check(ObjectNode full) {
    Problems problems = new Problems();
    double comparator = full.get("comparator").asDouble();
    double intervention = full.get("intervention").asDouble();
    if (full.get("measure").asText().equals("proportion")) {
      proportion("comparator", comparator, problems);
      proportion("intervention", intervention, problems);
      for (String field : List.of("scale", "standardDeviation", "source", "columns")) {
        if (full.has(field)) {
          problems.add(
              field,
              "not-for-measure",
              "a trial of proportions has no '"
                  + field
                  + "': both proportions say how widely"
                  + " patients differ; remove it");
        }
      }
    } else {
      means(full, comparator, intervention, problems);
    }
    if (comparator == intervention) {
      problems.add(
          "intervention",
          "no-difference",
          "found the same as the comparator, "
              + comparator
              + "; no number of patients finds a difference of 0: say which difference would"
              + " matter");
    }
    return problems.list();
  }

  private static void proportion(String field, double value, Problems problems) {
    if (!(value > 0 && value < 1)) {
      problems.add(
          field,
          "at-limit",
          "found "
              + value
              + ", expected a proportion above 0 and below 1: where everybody or nobody has the"
              + " event the formula gives patients no spread; take a rate that could really come");
    }
  }

  private static void means(
      ObjectNode full, double comparator, double intervention, Problems problems) {
    if (full.get("scale").asText().equals("log")) {
      for (String field : List.of("comparator", "intervention")) {
        if (!(full.get(field).asDouble() > 0)) {
          problems.add(
              field,
              "not-positive",
              "found " + full.get(field) + ", expected a mean above 0: the log scale has no other");
        }
      }
    }
    if (full.has("source") == full.has("standardDeviation")) {
      problems.add(
          "standardDeviation",
          "spread-once",
          "expected either \"standardDeviation\" (on the scale of the plan) or a \"source\" of"
              + " groups that tell theirs, and not both");
    }
  }

  @Override
  public String measure() {
    return json.get("measure").asText();
  }

  /** Whether logarithms are compared. */
  boolean logs() {
    return json.path("scale").asText().equals("log");
  }

  Demands demands() {
    return new Demands(1 - json.get("level").asDouble(), json.get("power").asDouble());
  }

  @Override
  public Result runOn(DataTable table) {
    return new TrialRun(this, table).run();
  }
}
