package gapwise.analysis.curves;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.synthesis.survival.CurveReconstruction;
import gapwise.synthesis.survival.CurveReconstruction.Reconstructed;
import gapwise.synthesis.survival.DigitisedCurve;
import gapwise.synthesis.survival.NumbersAtRisk;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** The task {@code reconstruct-curve}. */
final class CurveRun {
  /** Further from the reading than this, a reconstructed curve is told to differ from it. */
  private static final double FAR = 0.02;

  /** A median further off than this share is told; common practice, no source. */
  private static final double MEDIAN_SHARE = 0.05;

  private final CurvePlan plan;
  private final DataTable table;
  private final Problems problems = new Problems();
  private final List<Result.Warning> warnings;

  CurveRun(CurvePlan plan, DataTable table) {
    this.plan = plan;
    this.table = table;
    this.warnings = new ArrayList<>(table.warnings());
  }

  Result run() {
    Map<String, DigitisedCurve> curves = new CurvePoints(plan, table, problems, warnings).read();
    Problems ofMarks = new Problems();
    Map<String, NumbersAtRisk> atRisk =
        new AtRiskMarks(plan, ofMarks, warnings).read(table.beside());
    problems.addAll(ofMarks.list());
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    List<CurveGroup> groups = new ArrayList<>();
    plan.groups()
        .forEach(
            (name, reported) ->
                groups.add(
                    group(
                        name,
                        reported,
                        Objects.requireNonNull(curves.get(name), name),
                        Objects.requireNonNull(atRisk.get(name), name))));
    return new SurvivalAnswer(plan.questions(), groups, warnings).result(plan.head(), table);
  }

  private CurveGroup group(
      String name, CurvePlan.Reported reported, DigitisedCurve curve, NumbersAtRisk atRisk) {
    Reconstructed done = CurveReconstruction.of(curve, atRisk, reported.events());
    CurveGroup group =
        CurveGroup.of(
            Optional.of(name),
            Optional.empty(),
            done.times(),
            OptionalDouble.of(done.largestDifference()));
    if (atRisk.marks().size() == 1 && reported.events().isEmpty()) {
      warn(name, "censoring-assumed", say("analysis.censoring-assumed", Map.of("curve", name)));
    }
    if (!done.unreached().isEmpty()) {
      warn(
          name,
          "numbers-at-risk-not-reproduced",
          say(
              "analysis.at-risk-not-reproduced",
              Map.of(
                  "curve",
                  name,
                  "times",
                  done.unreached().stream()
                      .map(mark -> String.valueOf(mark.time()))
                      .collect(Collectors.joining(", ")))));
    }
    if (done.largestDifference() > FAR) {
      warn(
          name,
          "curve-not-followed",
          say(
              "analysis.curve-not-followed",
              Map.of("curve", name, "difference", String.valueOf(done.largestDifference()))));
    }
    compare(name, reported, group);
    return group;
  }

  private void compare(String name, CurvePlan.Reported reported, CurveGroup group) {
    int events = group.times().events();
    if (reported.events().isPresent() && reported.events().getAsInt() != events) {
      warn(
          name,
          "events-not-reproduced",
          say(
              "analysis.events-not-reproduced",
              Map.of(
                  "curve",
                  name,
                  "events",
                  String.valueOf(events),
                  "reported",
                  String.valueOf(reported.events().getAsInt()))));
    }
    OptionalDouble median = group.curve().median();
    if (reported.median().isPresent()
        && !(median.isPresent() && near(median.getAsDouble(), reported.median().getAsDouble()))) {
      warn(
          name,
          "median-not-reproduced",
          median.isPresent()
              ? say(
                  "analysis.median-not-reproduced",
                  Map.of(
                      "curve",
                      name,
                      "median",
                      String.valueOf(median.getAsDouble()),
                      "reported",
                      String.valueOf(reported.median().getAsDouble())))
              : say(
                  "analysis.no-median-found",
                  Map.of(
                      "curve", name, "reported", String.valueOf(reported.median().getAsDouble()))));
    }
  }

  private static boolean near(double found, double reported) {
    return Math.abs(found - reported) <= MEDIAN_SHARE * reported;
  }

  private void warn(String group, String code, String message) {
    warnings.add(Result.Warning.of(code, message, group));
  }
}
