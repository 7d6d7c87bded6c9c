package gapwise.analysis.trial;

import gapwise.analysis.pooling.PoolingPlan;
import gapwise.analysis.pooling.Studies;
import gapwise.analysis.pooling.StudyTable;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;
import gapwise.effect.ArmMean;
import gapwise.effect.Measure;
import gapwise.effect.StudyData;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.synthesis.trial.CommonSpread;
import gapwise.synthesis.trial.TrialOfMeans;
import gapwise.synthesis.trial.TrialOfProportions;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;

/** The task {@code trial}. */
final class TrialRun {
  private static final String FORMULA = "formula";

  private final TrialPlan plan;
  private final DataTable table;
  private final List<Result.Warning> warnings;

  TrialRun(TrialPlan plan, DataTable table) {
    this.plan = plan;
    this.table = table;
    this.warnings = new ArrayList<>(table.warnings());
  }

  Result run() {
    return plan.ofProportions() ? proportions() : means();
  }

  private Result proportions() {
    TrialOfProportions trial = new TrialOfProportions(plan.comparator(), plan.intervention());
    double exact = trial.patientsPerArm(plan.demands());
    double corrected = trial.patientsPerArmWithContinuityCorrection(plan.demands());
    Result.Data none =
        new Result.Data(0, 0, OptionalDouble.empty(), OptionalDouble.empty(), table.sha256());
    return new Result(
        plan.head().json(), none, proportions(trial, exact, whole(corrected)), warnings);
  }

  private TrialResult proportions(TrialOfProportions trial, double formula, long corrected) {
    OptionalInt counted = trial.patientsPerArmByExactTest(plan.demands());
    long perArm = counted.isPresent() ? counted.getAsInt() : whole(formula);
    return new TrialResult(
        perArm,
        2 * perArm,
        counted.isPresent() ? "exact-test" : FORMULA,
        formula,
        OptionalLong.of(corrected),
        counted.isPresent()
            ? OptionalDouble.of(trial.powerOfExactTest(counted.getAsInt(), plan.demands()))
            : OptionalDouble.empty(),
        plan.intervention() - plan.comparator(),
        OptionalDouble.empty(),
        OptionalInt.empty());
  }

  private Result means() {
    double difference =
        plan.logs()
            ? Math.log(plan.intervention() / plan.comparator())
            : plan.intervention() - plan.comparator();
    if (plan.standardDeviation().isPresent()) {
      double given = plan.standardDeviation().getAsDouble();
      Result.Data none =
          new Result.Data(0, 0, OptionalDouble.empty(), OptionalDouble.empty(), table.sha256());
      return means(none, difference, given, OptionalInt.empty());
    }
    PoolingPlan asked = plan.groups().orElseThrow();
    Studies<?> studies = studies(asked, asked.how());
    List<ArmMean> groups =
        studies.all().stream()
            .flatMap(entry -> entry.data().stream())
            .map(ArmMean.class::cast)
            .toList();
    OptionalDouble spread = CommonSpread.of(groups, plan.logs());
    if (spread.isEmpty()) {
      throw wrong(
          "source",
          "no-spread",
          "found no group of two patients or more that tells how widely they differ; name a"
              + " standardDeviation");
    }
    return means(
        StudyTable.data(studies, table),
        difference,
        spread.getAsDouble(),
        OptionalInt.of(CommonSpread.groups(groups, plan.logs())));
  }

  private <D extends StudyData> Studies<D> studies(PoolingPlan asked, Measure<D> measure) {
    Studies<D> studies = Studies.read(asked, measure, table);
    warnings.addAll(studies.warnings());
    return studies;
  }

  private Result means(
      Result.Data data, double difference, double standardDeviation, OptionalInt groups) {
    OptionalDouble exact =
        new TrialOfMeans(difference, standardDeviation).patientsPerArm(plan.demands());
    if (exact.isEmpty()) {
      throw wrong(
          "intervention",
          "too-many-patients",
          "more than ten million patients in each arm would be needed to find so small a"
              + " difference; say which difference would matter");
    }
    return new Result(
        plan.head().json(),
        data,
        means(exact.getAsDouble(), difference, standardDeviation, groups),
        warnings);
  }

  private static TrialResult means(
      double exact, double difference, double standardDeviation, OptionalInt groups) {
    long whole = whole(exact);
    return new TrialResult(
        whole,
        2 * whole,
        FORMULA,
        exact,
        OptionalLong.empty(),
        OptionalDouble.empty(),
        difference,
        OptionalDouble.of(standardDeviation),
        groups);
  }

  private static long whole(double patients) {
    return (long) Math.ceil(patients);
  }

  private static WrongInputException wrong(String where, String code, String message) {
    return new WrongInputException(List.of(new Problem(where, code, message)));
  }
}
