package gapwise.decision.choice;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.Edition;
import gapwise.decision.cost.Acceptance;
import gapwise.decision.cost.Amount;
import gapwise.decision.cost.CostModel;
import gapwise.decision.cost.CostsAndEffects;
import gapwise.decision.cost.Entry;
import gapwise.evidence.vocabulary.Method;
import gapwise.figure.FigureProvenance;
import gapwise.figure.plane.Acceptability;
import gapwise.figure.plane.Cloud;
import gapwise.figure.plane.Plane;
import gapwise.figure.value.Shown;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Costs against effects, drawn. */
public final class CostFigures {
  private static final double HUNDRED = 100;

  private CostFigures() {}

  /** The plane; empty where there are more methods than clouds that can be told apart. */
  public static Optional<Plane> plane(CostedMethods methods, Edition edition) {
    if (!isDrawn(methods) || methods.isSilent(methods.against())) {
      return Optional.empty();
    }
    CostsAndEffects outcomes = methods.costed().outcomes();
    int against = methods.against();
    List<Cloud> clouds = new ArrayList<>();
    for (int method : methods.compared()) {
      if (method == against) {
        continue;
      }
      clouds.add(
          Cloud.thinned(
              ChoiceFigures.mark(methods.methods().get(method)),
              new Cloud.Spot(
                  outcomes.meanEffect(method) - outcomes.meanEffect(against),
                  outcomes.meanCost(method) - outcomes.meanCost(against)),
              IntStream.range(0, outcomes.draws())
                  .mapToObj(
                      draw ->
                          new Cloud.Spot(
                              outcomes.effect(method, draw) - outcomes.effect(against, draw),
                              outcomes.cost(method, draw) - outcomes.cost(against, draw)))
                  .toList(),
              Plane.marksOfEach(methods.compared().size() - 1)));
    }
    Method zero = methods.methods().get(against);
    return Optional.of(
        new Plane(
            say("choice.plane-title", Map.of("method", zero.shortLabel())),
            List.of(terms(methods), stages(methods)),
            zero.shortLabel(),
            effect(methods),
            money(methods),
            clouds,
            cautions(methods),
            provenance(methods, edition)));
  }

  /** How often each has the highest net benefit; empty where there are too many to draw. */
  public static Optional<Acceptability> acceptability(CostedMethods methods, Edition edition) {
    if (!isDrawn(methods)) {
      return Optional.empty();
    }
    List<Integer> compared = methods.compared();
    List<Acceptance> curve = methods.curve();
    return Optional.of(
        new Acceptability(
            say("choice.curve-title"),
            List.of(terms(methods), stages(methods)),
            say("choice.for-one-more", Map.of("money", money(methods), "effect", one(methods))),
            curve.stream().map(Acceptance::lambda).toList(),
            IntStream.range(0, compared.size())
                .mapToObj(
                    m ->
                        new Acceptability.Line(
                            ChoiceFigures.mark(methods.methods().get(compared.get(m))),
                            curve.stream().map(at -> Math.min(1, at.shares().get(m))).toList()))
                .toList(),
            curve.stream().map(Acceptance::best).toList(),
            cautions(methods),
            provenance(methods, edition)));
  }

  /**
   * Whether effects of two methods or more can be compared, and of no more than can be told apart.
   */
  private static boolean isDrawn(CostedMethods methods) {
    int compared = methods.compared().size();
    return compared >= 2 && compared <= Plane.MOST_METHODS + 1;
  }

  /** Currency with the year of its prices. */
  public static String money(CostedMethods methods) {
    return say(
        "choice.money",
        Map.of(
            "currency",
            methods.costed().entries().currency(),
            "year",
            Integer.toString(methods.costed().entries().priceYear().orElseThrow())));
  }

  /** What effects are counted in. */
  public static String effect(CostedMethods methods) {
    return isQuality(methods) ? say("choice.quality-years") : say("choice.years-healed");
  }

  /** One of them. */
  public static String one(CostedMethods methods) {
    return isQuality(methods) ? say("choice.one-quality-year") : say("choice.one-year-healed");
  }

  private static boolean isQuality(CostedMethods methods) {
    return methods.costed().effect() == CostModel.Effect.QUALITY_ADJUSTED_YEARS;
  }

  /** Horizon and discount rates, which belong to every result. */
  public static String terms(CostedMethods methods) {
    return say(
        "choice.terms",
        Map.of(
            "years", number(methods, Entry.HORIZON_YEARS, 1),
            "costs", number(methods, Entry.DISCOUNT_COSTS, HUNDRED),
            "effects", number(methods, Entry.DISCOUNT_EFFECTS, HUNDRED)));
  }

  /** In how many planned stages each method is done, and who says so. */
  public static String stages(CostedMethods methods) {
    return say(
        "choice.stages",
        Map.of(
            "methods",
            IntStream.range(0, methods.methods().size())
                .mapToObj(m -> methods.stages().get(m).words(methods.methods().get(m)))
                .collect(Collectors.joining(", "))));
  }

  private static String number(CostedMethods methods, Entry entry, double factor) {
    Amount amount =
        Objects.requireNonNull(methods.costed().entries().amounts().get(entry), entry.code());
    return Shown.centimetres(factor * amount.mean());
  }

  /** What must be known beside costs and effects, wherever they stand. */
  public static List<String> cautions(CostedMethods methods) {
    List<String> cautions = new ArrayList<>();
    cautions.add(say("choice.separate-costs"));
    cautions.add(say("choice.assumed"));
    if (!isQuality(methods)) {
      cautions.add(say("choice.years-healed-only"));
    }
    methods.costed().cautions().stream()
        .filter(problem -> problem.code().equals("seen-shorter-than-treatment"))
        .map(problem -> ended(problem.message()))
        .forEach(cautions::add);
    cautions.add(say("choice.conversation"));
    return cautions;
  }

  /** What happened to draws of single methods on the way. */
  public static List<String> notes(CostedMethods methods) {
    return methods.costed().cautions().stream()
        .filter(problem -> Set.of("shares-scaled", "months-lengthened").contains(problem.code()))
        .map(problem -> ended(problem.message()))
        .toList();
  }

  private static String ended(String words) {
    return words.endsWith(".") ? words : words + ".";
  }

  private static FigureProvenance provenance(CostedMethods methods, Edition edition) {
    return ChoiceFigures.provenance(
        methods.columns(),
        methods.methods(),
        say("choice.cost-model", Map.of("draws", CostedTable.DRAWS)),
        edition);
  }
}
