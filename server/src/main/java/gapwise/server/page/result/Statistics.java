package gapwise.server.page.result;

import gapwise.analysis.pooling.SubgroupsResult;
import gapwise.analysis.result.Result;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.evidence.vocabulary.Method;
import gapwise.figure.value.Shown;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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
        String name =
            Method.vocabulary().find(group.level()).map(Method::shortLabel).orElse(group.level());
        heterogeneity(lines, name + ": ", group.heterogeneity());
      }
    } else {
      synthesis.heterogeneity().ifPresent(all -> heterogeneity(lines, "", all));
    }
    return lines;
  }

  private static void heterogeneity(List<Line> lines, String of, Result.Heterogeneity h) {
    if (h.pValue().isEmpty() && h.tauSquared().isEmpty()) {
      return; // one series: nothing differs
    }
    add(
        lines,
        of + "tau",
        h.tau(),
        "",
        "standard deviation of true results between centres, on the scale of the analysis");
    if (h.tauSquared().isPresent()) {
      String interval =
          h.tauSquaredLower().isPresent() && h.tauSquaredUpper().isPresent()
              ? " ("
                  + number(h.tauSquaredLower().getAsDouble())
                  + " to "
                  + number(h.tauSquaredUpper().getAsDouble())
                  + ")"
              : "";
      lines.add(
          new Line(
              of + "tau squared",
              number(h.tauSquared().getAsDouble()) + interval,
              interval.isEmpty() ? "its square" : "its square, with 95 % interval by Q profile"));
    }
    add(
        lines,
        of + "I squared",
        h.iSquaredPercent(),
        " %",
        "share of the spread that is not chance; says nothing of how large the spread is");
    if (h.q().isPresent() && h.pValue().isPresent() && h.degreesOfFreedom().isPresent()) {
      lines.add(
          new Line(
              of + "Q",
              number(h.q().getAsDouble())
                  + " on "
                  + h.degreesOfFreedom().getAsInt()
                  + " degrees of freedom, p "
                  + p(h.pValue().getAsDouble()),
              "Cochran's test of whether chance alone explains the spread"));
    }
  }

  private static void add(
      List<Line> lines, String name, OptionalDouble value, String unit, String meaning) {
    if (value.isPresent()) {
      lines.add(new Line(name, number(value.getAsDouble()) + unit, meaning));
    }
  }

  private static String number(double value) {
    return Shown.number(value);
  }

  private static String p(double value) {
    return value < 0.001 ? "below 0.001" : String.format(Locale.ROOT, "%.3f", value);
  }
}
