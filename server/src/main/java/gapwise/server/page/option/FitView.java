package gapwise.server.page.option;

import static gapwise.sentence.Sentences.say;

import gapwise.decision.option.FitOfMethod;
import gapwise.decision.option.OptionTable;
import gapwise.decision.situation.Attribute;
import gapwise.decision.situation.Fit;
import gapwise.evidence.vocabulary.Method;
import java.util.List;
import java.util.Set;

/**
 * How the groups of each method match the situation, one thing at a time.
 *
 * @param heads what is asked of the patient
 * @param lines the methods
 */
public record FitView(List<Head> heads, List<Line> lines) {
  public FitView {
    heads = List.copyOf(heads);
    lines = List.copyOf(lines);
  }

  /**
   * One thing that is asked.
   *
   * @param counts whether a group counts as inside or outside by it
   */
  public record Head(String label, boolean counts) {}

  /** One method. */
  public record Line(Method method, int groups, List<String> fits) {}

  static FitView of(OptionTable table) {
    List<Attribute> asked = List.copyOf(table.situation().asked());
    Set<Attribute> counting = table.situation().mattering();
    return new FitView(
        asked.stream().map(one -> new Head(one.label(), counting.contains(one))).toList(),
        FitOfMethod.of(table).stream()
            .map(
                fit ->
                    new Line(
                        fit.method(),
                        fit.groups(),
                        asked.stream().map(one -> words(fit.of(one))).toList()))
            .toList());
  }

  private static String words(Fit fit) {
    return fit.equals(Fit.NONE) ? say("decision.fit-not-asked") : fit.words();
  }
}
