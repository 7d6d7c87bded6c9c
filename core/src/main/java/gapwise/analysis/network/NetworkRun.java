package gapwise.analysis.network;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.pooling.StudyWarnings;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;
import gapwise.budget.Limit;
import gapwise.budget.Work;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.synthesis.network.Network;
import gapwise.synthesis.network.NetworkPredictions;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The model {@code network}: rows to studies, studies to the network. */
final class NetworkRun {
  private final NetworkPlan plan;
  private final NetworkData data;
  private final Optional<ModeratorOfStudies> numbers;
  private final List<Result.Warning> warnings;

  private NetworkRun(
      NetworkPlan plan,
      NetworkData data,
      Optional<ModeratorOfStudies> numbers,
      List<Result.Warning> warnings) {
    this.plan = plan;
    this.data = data;
    this.numbers = numbers;
    this.warnings = warnings;
  }

  static Result of(NetworkPlan plan, DataTable table) {
    NamedTreatments.refuseTooMany(plan, table);
    NetworkData data =
        plan.arms().isPresent()
            ? ArmStudies.read(plan, plan.arms().get(), table)
            : ContrastStudies.read(plan, plan.contrasts().orElseThrow(), table);
    checkTreatments(plan, data);
    Optional<ModeratorOfStudies> numbers =
        plan.moderator().map(one -> ModeratorOfStudies.read(plan, one.column(), table));
    Work.require(
        Limit.DRAWS, plan.draws().draws(), "rankingDraws", "Some ten thousand tell enough.");
    Work.require(
        Limit.STUDIES,
        data.studies().size() + data.counted().size(),
        "source",
        "Compare fewer studies at a time.");
    List<Result.Warning> warnings = new ArrayList<>(table.warnings());
    warnings.addAll(plan.unused());
    warnings.addAll(data.warnings());
    return new NetworkRun(plan, data, numbers, warnings).run();
  }

  private static void checkTreatments(NetworkPlan plan, NetworkData data) {
    if (plan.reference().isPresent() && !data.named().contains(plan.reference().get())) {
      throw wrong(
          "reference",
          "unknown-treatment",
          "no row has the treatment '"
              + plan.reference().get()
              + "'; the data have "
              + data.named().stream().sorted().toList());
    }
  }

  private static WrongInputException wrong(String where, String code, String message) {
    return new WrongInputException(List.of(new Problem(where, code, message)));
  }

  private Result run() {
    if (plan.exact() ? data.counted().isEmpty() : data.studies().isEmpty()) {
      return told(Optional.empty(), Optional.empty());
    }
    if (plan.exact()) {
      Optional<ExactNetworkReport> exact = ExactNetworkReport.of(plan, data, warnings);
      return told(exact.map(ExactNetworkReport::fit), exact.map(ExactNetworkReport::result));
    }
    Network.Fitted fitted =
        Network.of(data.studies(), plan.reference().orElse(""), plan.settings());
    if (fitted instanceof Network.Fitted.Not not) {
      warnings.add(Result.Warning.of(not.why()));
      return told(Optional.empty(), Optional.empty());
    }
    Network network = ((Network.Fitted.Done) fitted).network();
    NetworkWarnings.add(plan, data, network, warnings);
    Optional<NetworkRegressionResult> regression =
        numbers.flatMap(
            found ->
                NetworkRegressionPart.of(
                    plan,
                    plan.moderator().orElseThrow(),
                    data,
                    found,
                    network.treatments().get(0),
                    warnings));
    Optional<NetworkPredictions> predictions = network.predictions();
    if (predictions.isEmpty() && network.tellsFurtherStudies()) {
      warnings.add(
          Result.Warning.of("prediction-left-out", say("analysis.further-study-left-out")));
    }
    boolean known =
        plan.settings().spread() == NetworkPredictions.Spread.T_K_MINUS_2
            && network.heterogeneity().tauSquared().filter(one -> one.value() == 0).isPresent();
    if (predictions.isPresent() && known) {
      warnings.add(
          Result.Warning.of(
              "prediction-takes-spread-as-known",
              say("analysis.spread-of-structure-taken-as-known")));
    }
    NetworkReport report = new NetworkReport(plan, data, network, predictions, regression);
    return told(report.fit(), Optional.of(report.result()));
  }

  private Result told(Optional<Result.Fit> fit, Optional<NetworkResult> network) {
    StudyWarnings.rowsWithoutWidth(data.rows()).ifPresent(warnings::add);
    network.flatMap(NetworkWarnings::withoutWidth).ifPresent(warnings::add);
    return new Result(
        plan.head().json(), data.data(), new NetworkAnswer(data.rows(), fit, network), warnings);
  }
}
