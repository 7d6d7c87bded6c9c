package gapwise.analysis.patients;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;
import gapwise.numeric.ReferenceDistribution;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.synthesis.patients.BinaryModel;
import gapwise.synthesis.patients.CountArm;
import gapwise.synthesis.patients.Degrees;
import gapwise.synthesis.patients.MeanArm;
import gapwise.synthesis.patients.MeasuredModel;
import gapwise.synthesis.patients.Patient;
import gapwise.synthesis.patients.PatientsFit;
import gapwise.synthesis.patients.StudyEvidence;
import gapwise.synthesis.patients.Term;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.BiFunction;

/** The task {@code patients-with-summaries}. */
final class PatientsRun {
  /** Fewer tell little of how studies differ: common practice, no source. */
  private static final int FEW_STUDIES = 10;

  private final PatientsPlan plan;
  private final DataTable table;
  private final Problems problems = new Problems();
  private final List<Result.Warning> warnings;
  private final PatientRows reader;

  PatientsRun(PatientsPlan plan, DataTable table) {
    this.plan = plan;
    this.table = table;
    this.warnings = new ArrayList<>(table.warnings());
    this.reader = new PatientRows(plan, problems, warnings);
  }

  Result run() {
    if (!plan.events() && plan.points().isPresent()) {
      warnings.add(Result.Warning.of("setting-not-used", say("analysis.points-not-used")));
    }
    Map<String, List<Patient>> patients = reader.patients(table);
    return plan.events() ? ofEvents(patients) : ofMeasurements(patients);
  }

  private Result ofEvents(Map<String, List<Patient>> patients) {
    List<StudyEvidence<CountArm>> studies = studies(patients, PatientRows::counts);
    double events = 0;
    double total = 0;
    for (StudyEvidence<CountArm> study : studies) {
      events += study.patients().stream().mapToDouble(Patient::outcome).sum();
      events += study.arms().stream().mapToDouble(CountArm::events).sum();
      total += study.patients().size();
      total += study.arms().stream().mapToDouble(CountArm::total).sum();
    }
    boolean pointlike =
        studies.stream()
            .flatMap(study -> study.arms().stream())
            .anyMatch(arm -> arm.spread().isEmpty());
    if (pointlike) {
      warnings.add(
          Result.Warning.of(
              "spread-within-arm-ignored", say("analysis.spread-within-arm-ignored")));
    }
    PatientsFit fit =
        studies.isEmpty()
            ? nothing()
            : BinaryModel.fit(studies, plan.centre(), plan.points().orElseThrow());
    return result(studies, fit, OptionalDouble.of(total), OptionalDouble.of(events));
  }

  private Result ofMeasurements(Map<String, List<Patient>> patients) {
    List<StudyEvidence<MeanArm>> studies = studies(patients, PatientRows::means);
    if (plan.logs() && studies.stream().anyMatch(study -> !study.arms().isEmpty())) {
      warnings.add(Result.Warning.of("converted-to-log-scale", say("analysis.carried-to-logs")));
    }
    PatientsFit fit =
        studies.isEmpty()
            ? nothing()
            : MeasuredModel.fit(studies, plan.centre(), plan.restricted());
    return result(studies, fit, OptionalDouble.empty(), OptionalDouble.empty());
  }

  private static PatientsFit nothing() {
    return new PatientsFit.NotEstimable(
        new Problem("", "no-studies", say("analysis.no-row-enters")));
  }

  private <A> List<StudyEvidence<A>> studies(
      Map<String, List<Patient>> patients,
      BiFunction<PatientRows, DataTable, Map<String, List<A>>> reading) {
    Map<String, List<A>> arms =
        table.beside().map(beside -> reading.apply(reader, beside)).orElse(Map.of());
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    Set<String> labels = new LinkedHashSet<>(patients.keySet());
    labels.addAll(arms.keySet());
    return labels.stream()
        .map(
            label ->
                new StudyEvidence<>(
                    label,
                    patients.getOrDefault(label, List.of()),
                    arms.getOrDefault(label, List.of())))
        .toList();
  }

  private <A> Result result(
      List<StudyEvidence<A>> studies,
      PatientsFit fit,
      OptionalDouble participants,
      OptionalDouble events) {
    int withPatients = 0;
    int patients = 0;
    int arms = 0;
    for (StudyEvidence<A> study : studies) {
      withPatients += study.patients().isEmpty() ? 0 : 1;
      patients += study.patients().size();
      arms += study.arms().size() + (study.patients().isEmpty() ? 0 : 1);
    }
    Result.Data data = new Result.Data(studies.size(), arms, participants, events, table.sha256());
    Optional<Result.Fit> top = Optional.empty();
    List<PatientsResult.Coefficient> coefficients = new ArrayList<>();
    OptionalDouble tauSquared = OptionalDouble.empty();
    OptionalDouble residual = OptionalDouble.empty();
    if (fit instanceof PatientsFit.NotEstimable not) {
      warnings.addAll(List.of(Result.Warning.of(not.problem())));
    } else {
      PatientsFit.Estimate found = (PatientsFit.Estimate) fit;
      Degrees degrees = new Degrees(studies.size(), withPatients, patients);
      List<Term> terms = found.coefficients().stream().map(PatientsFit.Coefficient::term).toList();
      found
          .coefficients()
          .forEach(one -> coefficients.add(told(one, degrees.of(one.term(), terms))));
      if (studies.size() < FEW_STUDIES) {
        warnings.add(
            Result.Warning.of(
                "few-studies",
                say("analysis.few-studies-for-patients", Map.of("studies", studies.size()))));
      }
      tauSquared = OptionalDouble.of(found.tauSquared());
      residual = found.residualVariance();
      top =
          Optional.of(new Result.Fit(found.logLikelihood(), found.restricted(), found.converged()));
      found.warnings().forEach(one -> warnings.add(Result.Warning.of(one)));
    }
    PatientsResult told =
        new PatientsResult(
            coefficients,
            tauSquared,
            residual,
            withPatients,
            studies.size() - withPatients,
            patients);
    return new Result(plan.head().json(), data, new PatientsAnswer(top, told), warnings);
  }

  private PatientsResult.Coefficient told(PatientsFit.Coefficient one, int degrees) {
    ReferenceDistribution reference = ReferenceDistribution.studentT(degrees);
    double half = reference.multiplier(plan.head().level()) * one.standardError();
    double statistic = one.estimate() / one.standardError();
    return new PatientsResult.Coefficient(
        one.term().word(),
        one.estimate(),
        one.standardError(),
        one.estimate() - half,
        one.estimate() + half,
        statistic,
        degrees,
        reference.twoSidedP(statistic));
  }
}
