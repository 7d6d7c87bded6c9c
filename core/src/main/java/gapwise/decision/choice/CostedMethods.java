package gapwise.decision.choice;

import gapwise.decision.cost.Acceptance;
import gapwise.decision.cost.CostModel;
import gapwise.decision.cost.Costed;
import gapwise.decision.cost.CostsAndEffects;
import gapwise.decision.cost.MethodCourse;
import gapwise.decision.option.Column;
import gapwise.evidence.vocabulary.Method;
import gapwise.figure.value.Estimate;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/**
 * Methods reckoned in costs.
 *
 * @param asked how they were to be reckoned
 * @param columns the outcomes that their courses are made of
 * @param methods the methods, in the order of the table
 * @param stages in how many stages each is done, in the same order
 * @param against the place of the one that the others are held against
 * @param costed costs and effects
 * @param leftOut methods that are left out, with the reasons
 * @param filled methods of which an outcome is certain, or anything within its range
 */
public record CostedMethods(
    CostAsked asked,
    List<Column> columns,
    List<Method> methods,
    List<Stages> stages,
    int against,
    Costed costed,
    List<Named> leftOut,
    List<Named> filled)
    implements CostedTable {
  /** Amounts of money at which the curve is worked out, beside 0. */
  private static final int STEPS = 40;

  private static final double TAIL = 0.025;

  public CostedMethods {
    Objects.requireNonNull(asked, "asked");
    columns = List.copyOf(columns);
    methods = List.copyOf(methods);
    stages = List.copyOf(stages);
    Objects.requireNonNull(costed, "costed");
    leftOut = List.copyOf(leftOut);
    filled = List.copyOf(filled);
    if (against < 0 || against >= methods.size()) {
      throw new IllegalArgumentException("no method " + against + " of " + methods);
    }
  }

  /** The mean cost of a method with the limits between which 95 of 100 draws lie. */
  public Estimate cost(int method) {
    return estimate(
        costed.outcomes().meanCost(method), draw -> costed.outcomes().cost(method, draw));
  }

  /** The same of its effect. */
  public Estimate effect(int method) {
    return estimate(
        costed.outcomes().meanEffect(method), draw -> costed.outcomes().effect(method, draw));
  }

  private Estimate estimate(double mean, IntToDoubleFunction value) {
    double[] rising = IntStream.range(0, costed.outcomes().draws()).mapToDouble(value).toArray();
    Arrays.sort(rising);
    int cut = (int) Math.floor(TAIL * rising.length);
    return Estimate.of(mean, rising[cut], rising[rising.length - 1 - cut]);
  }

  /** Whether effects say nothing of a method: years healed of one that gives the limb up. */
  public boolean isSilent(int method) {
    return costed.effect() == CostModel.Effect.YEARS_HEALED
        && costed.methods().get(method).method().kind() == MethodCourse.Kind.AMPUTATION;
  }

  /** Places of the methods whose effects can be held against each other. */
  public List<Integer> compared() {
    return IntStream.range(0, methods.size()).filter(m -> !isSilent(m)).boxed().toList();
  }

  /**
   * What money for one more year makes of the methods that can be compared, in their order, from
   * none to the most asked; nothing where there are fewer than two.
   */
  public List<Acceptance> curve() {
    return at(STEPS);
  }

  /**
   * The same at a few amounts, evenly spaced.
   *
   * @param steps beside 0, 1 or more
   */
  public List<Acceptance> at(int steps) {
    List<Integer> compared = compared();
    if (compared.size() < 2) {
      return List.of();
    }
    CostsAndEffects outcomes = costed.outcomes();
    int draws = outcomes.draws();
    double[][] costs = new double[compared.size()][draws];
    double[][] effects = new double[compared.size()][draws];
    for (int m = 0; m < compared.size(); m++) {
      int place = compared.get(m);
      Arrays.setAll(costs[m], draw -> outcomes.cost(place, draw));
      Arrays.setAll(effects[m], draw -> outcomes.effect(place, draw));
    }
    double most = asked.upTo().orElseThrow();
    return CostsAndEffects.of(
            compared.stream().map(place -> methods.get(place).code()).toList(), costs, effects)
        .curve(IntStream.rangeClosed(0, steps).mapToObj(i -> most * i / steps).toList());
  }
}
