package gapwise.analysis.agreement;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;
import gapwise.effect.Interval;
import gapwise.numeric.ReferenceDistribution;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.synthesis.agreement.IntraclassCorrelation;
import gapwise.synthesis.agreement.Kappa;
import gapwise.synthesis.agreement.LimitsOfAgreement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The task {@code agreement}. */
final class AgreementRun {
  private final AgreementPlan plan;
  private final DataTable table;
  private final Problems problems = new Problems();

  /** Of a correlation, by which it may lie beyond 1. */
  private static final double ROUNDING = 1e-9;

  private final List<Result.Warning> warnings;

  AgreementRun(AgreementPlan plan, DataTable table) {
    this.plan = plan;
    this.table = table;
    this.warnings = new ArrayList<>(table.warnings());
  }

  Result run() {
    Optional<RatedPairs> pairs =
        plan.asks("kappa")
            ? Optional.of(RatedPairs.read(plan, table, problems, warnings))
            : Optional.empty();
    List<List<Double>> ratings =
        plan.raters().isEmpty() ? List.of() : Ratings.read(plan, table, problems, warnings);
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    Optional<IntraclassCorrelation> correlation = correlation(ratings);
    AgreementResult agreement =
        new AgreementResult(
            pairs
                .flatMap(RatedPairs::percentAgreement)
                .map(OptionalDouble::of)
                .orElse(OptionalDouble.empty()),
            pairs.map(this::kappas),
            correlation.map(AgreementRun::meanSquares),
            correlation.map(this::forms),
            limits(ratings));
    double subjects = pairs.map(RatedPairs::total).orElse((double) ratings.size());
    Result.Data data =
        new Result.Data(0, 0, OptionalDouble.of(subjects), OptionalDouble.empty(), table.sha256());
    return new Result(plan.head().json(), data, agreement, warnings);
  }

  private List<AgreementResult.Kappa> kappas(RatedPairs pairs) {
    List<AgreementResult.Kappa> kappas = new ArrayList<>();
    int categories = pairs.categories().size();
    for (AskedWeights weights : plan.weights()) {
      Optional<Kappa> kappa = Kappa.of(categories, pairs.pairs(), weights.agreement(categories));
      if (kappa.isEmpty()) {
        warnings.add(Result.Warning.of("no-variation", say("analysis.one-category")));
        continue;
      }
      Kappa k = kappa.get();
      double half =
          ReferenceDistribution.normal().multiplier(plan.head().level()) * k.standardError();
      kappas.add(
          new AgreementResult.Kappa(
              weights.name(),
              k.estimate(),
              k.standardError(),
              k.standardErrorUnderZero(),
              k.estimate() - half,
              k.estimate() + half));
    }
    if (kappas.stream().anyMatch(kappa -> kappa.standardError() == 0)) {
      withoutWidth(say("analysis.kappa-without-width"));
    }
    return kappas;
  }

  private Optional<IntraclassCorrelation> correlation(List<List<Double>> ratings) {
    if (!plan.asks("intraclass-correlation")) {
      return Optional.empty();
    }
    if (ratings.size() < 2) {
      tooFew(say("analysis.correlation-needs-subjects"));
      return Optional.empty();
    }
    IntraclassCorrelation correlation = IntraclassCorrelation.of(ratings, plan.head().level());
    boolean whole =
        correlation.forms().size() == 6
            && correlation.forms().stream().allMatch(form -> form.limits().isPresent());
    if (!whole) {
      warnings.add(Result.Warning.of("no-variation", say("analysis.no-variation")));
    }
    if (!correlation.forms().stream().allMatch(this::possible)) {
      warnings.add(Result.Warning.of("variance-below-zero", say("analysis.variance-below-zero")));
    }
    return Optional.of(correlation);
  }

  /**
   * Whether a correlation of some raters can be what it is told to be: not above 1, nor singly
   * below -1/(raters - 1). The two-way random forms are beyond where raters and subjects differ
   * less than what is left allows, and a variance comes out below 0.
   */
  private boolean possible(IntraclassCorrelation.Form form) {
    double least = -1.0 / (plan.raters().size() - 1) - ROUNDING;
    boolean single = form.name().equals("two-way-random-single");
    return form.estimate() <= 1 + ROUNDING && !(single && form.estimate() < least);
  }

  private Optional<LimitsOfAgreement> limits(List<List<Double>> ratings) {
    if (!plan.asks("limits-of-agreement")) {
      return Optional.empty();
    }
    if (ratings.size() < 2) {
      tooFew(say("analysis.limits-need-subjects"));
      return Optional.empty();
    }
    LimitsOfAgreement limits =
        LimitsOfAgreement.of(
            ratings.stream().map(pair -> pair.get(0) - pair.get(1)).toList(), plan.multiplier());
    if (limits.sd() == 0) {
      withoutWidth(say("analysis.limits-of-agreement-without-width"));
    }
    return Optional.of(limits);
  }

  private void withoutWidth(String sentence) {
    warnings.add(Result.Warning.of("zero-width-interval", sentence));
  }

  private void tooFew(String sentence) {
    warnings.add(Result.Warning.of("too-few-subjects", sentence));
  }

  private static AgreementResult.MeanSquares meanSquares(IntraclassCorrelation c) {
    return new AgreementResult.MeanSquares(
        c.betweenSubjects(), c.withinSubjects(), c.betweenRaters(), c.residual());
  }

  private List<AgreementResult.Correlation> forms(IntraclassCorrelation c) {
    return c.forms().stream()
        .filter(this::possible)
        .map(
            form ->
                new AgreementResult.Correlation(
                    form.name(),
                    form.estimate(),
                    form.limits().map(Interval::lower),
                    form.limits().map(Interval::upper)))
        .toList();
  }
}
