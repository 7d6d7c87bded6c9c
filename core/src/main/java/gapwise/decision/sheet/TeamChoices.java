package gapwise.decision.sheet;

import static gapwise.sentence.Sentences.say;

import gapwise.decision.choice.CostFigures;
import gapwise.decision.choice.CostedMethods;
import gapwise.decision.choice.CostedTable;
import gapwise.decision.choice.Named;
import gapwise.decision.choice.WeighedMethods;
import gapwise.decision.choice.WeighedTable;
import gapwise.decision.choice.WeighingFigure;
import gapwise.decision.weighing.Standing;
import gapwise.evidence.vocabulary.Method;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import gapwise.problem.Problem;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** The table weighed and reckoned in costs, in as few sentences as can be told by themselves. */
final class TeamChoices {
  private static final Quantity NUMBER = Quantity.mean("");
  private static final double HUNDRED = 100;

  private TeamChoices() {}

  /**
   * Wishes, how often each method comes first, and what is left out.
   *
   * @param shown the methods on the sheet
   */
  static List<String> weighed(WeighedTable weighed, List<Method> shown) {
    if (weighed instanceof WeighedTable.NotWeighed not) {
      return List.of(say("sheet.weighed-not", Map.of("reasons", reasons(not.problems()))));
    }
    WeighedMethods methods = (WeighedMethods) weighed;
    List<String> said = new ArrayList<>();
    said.add(WeighingFigure.sentences(methods).get(0));
    said.add(
        say(
            "sheet.weighed",
            Map.of(
                "shares",
                IntStream.range(0, methods.methods().size())
                    .mapToObj(m -> first(methods, m))
                    .collect(Collectors.joining(", ")),
                "error",
                Shown.number(HUNDRED * error(methods)))));
    leftOut(methods.leftOut(), shown, said);
    return said;
  }

  private static String first(WeighedMethods methods, int m) {
    Standing standing = methods.weighed().standings().get(m);
    return say(
        "sheet.weighed-first",
        Map.of(
            "method", methods.methods().get(m).shortLabel(),
            "share", Shown.of100(Math.min(1, standing.first()))));
  }

  /** The largest of all methods. */
  private static double error(WeighedMethods methods) {
    return methods.weighed().standings().stream()
        .mapToDouble(standing -> methods.weighed().error(Math.min(1, standing.first())))
        .max()
        .orElse(0);
  }

  /**
   * Terms, mean costs and effects, and what is left out.
   *
   * @param shown the methods on the sheet
   */
  static List<String> costed(CostedTable costed, List<Method> shown) {
    if (costed instanceof CostedTable.NotReckoned not) {
      return List.of(say("sheet.costed-not", Map.of("reasons", reasons(not.problems()))));
    }
    CostedMethods methods = (CostedMethods) costed;
    List<String> said = new ArrayList<>();
    said.add(CostFigures.terms(methods));
    said.add(
        say(
            "sheet.costed",
            Map.of(
                "money",
                CostFigures.money(methods),
                "effect",
                CostFigures.effect(methods),
                "costs",
                IntStream.range(0, methods.methods().size())
                    .mapToObj(m -> cost(methods, m))
                    .collect(Collectors.joining(", ")))));
    leftOut(methods.leftOut(), shown, said);
    return said;
  }

  private static String cost(CostedMethods methods, int m) {
    String name = methods.methods().get(m).shortLabel();
    String cost = Shown.estimate(NUMBER, methods.cost(m));
    return methods.isSilent(m)
        ? say("sheet.cost-alone", Map.of("method", name, "cost", cost))
        : say(
            "sheet.cost",
            Map.of(
                "method", name,
                "cost", cost,
                "effect", Shown.estimate(NUMBER, methods.effect(m))));
  }

  /** Of those that stand on the sheet: the table has every kind of amputation. */
  private static void leftOut(List<Named> leftOut, List<Method> shown, List<String> said) {
    String methods =
        leftOut.stream()
            .map(Named::method)
            .filter(shown::contains)
            .map(Method::shortLabel)
            .collect(Collectors.joining(", "));
    if (!methods.isEmpty()) {
      said.add(say("sheet.left-out", Map.of("methods", methods)));
    }
  }

  private static String reasons(List<Problem> problems) {
    return problems.stream().map(Problem::message).limit(2).collect(Collectors.joining(" "));
  }
}
