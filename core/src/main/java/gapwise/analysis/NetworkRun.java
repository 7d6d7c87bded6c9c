package gapwise.analysis;

import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.synthesis.network.Network;
import java.util.ArrayList;
import java.util.List;

/** The model {@code network}: rows to studies, studies to the network. */
final class NetworkRun {
  /** Comparisons grow with the square; so many names are spellings, not treatments. */
  private static final int MOST_TREATMENTS = 100;

  private final NetworkPlan plan;
  private final NetworkData data;
  private final List<Result.Warning> warnings;

  private NetworkRun(NetworkPlan plan, NetworkData data, List<Result.Warning> warnings) {
    this.plan = plan;
    this.data = data;
    this.warnings = warnings;
  }

  static Result of(NetworkPlan plan, DataTable table) {
    NetworkData data =
        plan.arms().isPresent()
            ? ArmStudies.read(plan, plan.arms().get(), table)
            : ContrastStudies.read(plan, plan.contrasts().orElseThrow(), table);
    checkTreatments(plan, data);
    List<Result.Warning> warnings = new ArrayList<>(table.warnings());
    warnings.addAll(UnusedSettings.of(plan.json()));
    warnings.addAll(data.warnings());
    return new NetworkRun(plan, data, warnings).run();
  }

  private static void checkTreatments(NetworkPlan plan, NetworkData data) {
    if (plan.reference().isPresent() && !data.named().contains(plan.reference().get())) {
      throw wrong(
          "reference",
          "unknown-treatment",
          "no row has the treatment '"
              + plan.reference().get()
              + "'; the data have "
              + data.named().stream().sorted().limit(MOST_TREATMENTS).toList());
    }
    if (data.named().size() > MOST_TREATMENTS) {
      throw wrong(
          "columns.treatment",
          "too-many-treatments",
          "found "
              + data.named().size()
              + " treatments, expected "
              + MOST_TREATMENTS
              + " at most; put spellings of one treatment together");
    }
  }

  private static WrongInputException wrong(String where, String code, String message) {
    return new WrongInputException(List.of(new Problem(where, code, message)));
  }

  private Result run() {
    ResultBuilder result = new ResultBuilder(plan.json(), data.data()).studies(data.rows());
    if (data.studies().isEmpty()) {
      return result.with(warnings);
    }
    Network.Fitted fitted =
        Network.of(data.studies(), plan.reference().orElse(""), plan.settings());
    if (fitted instanceof Network.Fitted.Not not) {
      warnings.addAll(StudyWarnings.of(List.of(not.why())));
      return result.with(warnings);
    }
    Network network = ((Network.Fitted.Done) fitted).network();
    NetworkWarnings.add(plan, data, network, warnings);
    NetworkReport report = new NetworkReport(plan, data, network);
    return result.network(report.result()).fit(report.fit()).with(warnings);
  }
}
