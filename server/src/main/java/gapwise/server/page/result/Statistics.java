package gapwise.server.page.result;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.bayesian.BayesianResult;
import gapwise.analysis.result.Result;
import gapwise.analysis.subgroups.SubgroupsResult;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.evidence.vocabulary.Method;
import gapwise.figure.value.Shown;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** The statistics under a result, for those who look for them. */
public final class Statistics {
  private Statistics() {}

  /** One statistic: what it is, its number, and what it tells. */
  public record Line(String name, String value, String meaning) {}

  static List<Line> of(Result result) {
    List<Line> lines = new ArrayList<>();
    SynthesisResult synthesis = SynthesisResult.of(result);
    if (synthesis.groups().isPresent()) {
      for (SubgroupsResult.Subgroup group : synthesis.listOfGroups()) {
        if (group.studies() < 2) {
          continue; // one series: nothing is known of how centres differ
        }
        String name =
            Method.vocabulary().find(group.level()).map(Method::shortLabel).orElse(group.level());
        posterior(lines, name, group.heterogeneity(), group.bayesian());
        heterogeneity(lines, name, group.heterogeneity());
      }
    } else if (pooled(synthesis) > 1) {
      synthesis
          .heterogeneity()
          .ifPresent(
              all -> {
                posterior(lines, "", all, synthesis.bayesian());
                heterogeneity(lines, "", all);
              });
    }
    return lines;
  }

  private static long pooled(SynthesisResult synthesis) {
    return synthesis.studies().stream().filter(s -> s.weightPercent().isPresent()).count();
  }

  /** Tau where nothing but its posterior tells of it. */
  private static void posterior(
      List<Line> lines, String of, Result.Heterogeneity h, Optional<BayesianResult> posterior) {
    posterior
        .flatMap(BayesianResult::tau)
        .filter(tau -> h.tau().isEmpty())
        .ifPresent(
            tau ->
                lines.add(
                    line(
                        of,
                        "tau",
                        say(
                            "page.value-and-limits",
                            Map.of(
                                "value", number(tau.median()),
                                "lower", number(tau.lower()),
                                "upper", number(tau.upper()))),
                        say("page.meaning-of-tau-by-posterior"))));
  }

  private static void heterogeneity(List<Line> lines, String of, Result.Heterogeneity h) {
    if (h.pValue().isEmpty() && h.tauSquared().isEmpty()) {
      return; // one series: nothing differs
    }
    if (h.tau().isPresent()) {
      lines.add(line(of, "tau", number(h.tau().getAsDouble()), say("page.meaning-of-tau")));
    }
    if (h.tauSquared().isPresent()) {
      lines.add(tauSquared(of, h, number(h.tauSquared().getAsDouble())));
    }
    OptionalDouble iSquared =
        h.iSquaredPercent().isPresent() ? h.iSquaredPercent() : h.iSquaredPercentFromQ();
    if (iSquared.isPresent()) {
      String percent = say("page.percent", Map.of("share", number(iSquared.getAsDouble())));
      lines.add(line(of, "I squared", percent, say("page.meaning-of-i-squared")));
    }
    if (h.q().isPresent() && h.pValue().isPresent() && h.degreesOfFreedom().isPresent()) {
      lines.add(
          line(
              of,
              "Q",
              say(
                  "page.q-and-p",
                  Map.of(
                      "q",
                      number(h.q().getAsDouble()),
                      "degrees",
                      h.degreesOfFreedom().getAsInt(),
                      "p",
                      p(h.pValue().getAsDouble()))),
              say("page.meaning-of-q")));
    }
  }

  private static Line tauSquared(String of, Result.Heterogeneity h, String value) {
    if (h.tauSquaredLower().isEmpty() || h.tauSquaredUpper().isEmpty()) {
      return line(of, "tau squared", value, say("page.meaning-of-square"));
    }
    String lower = number(h.tauSquaredLower().getAsDouble());
    String upper = number(h.tauSquaredUpper().getAsDouble());
    return line(
        of,
        "tau squared",
        say("page.value-and-limits", Map.of("value", value, "lower", lower, "upper", upper)),
        say("page.meaning-of-square-and-limits"));
  }

  /** A line whose name says of which method it is, where there are several. */
  private static Line line(String of, String statistic, String value, String meaning) {
    String name =
        of.isEmpty()
            ? statistic
            : say("page.statistic-of-method", Map.of("method", of, "statistic", statistic));
    return new Line(name, value, meaning);
  }

  private static String number(double value) {
    return Shown.number(value);
  }

  private static String p(double value) {
    return value < 0.001 ? say("page.smallest-p") : String.format(Locale.ROOT, "%.3f", value);
  }
}
