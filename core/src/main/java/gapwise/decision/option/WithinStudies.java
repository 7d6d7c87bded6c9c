package gapwise.decision.option;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.bayesian.BayesianResult;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.answer.Answers;
import gapwise.answer.MethodLine;
import gapwise.claim.Claim;
import gapwise.claim.Compared;
import gapwise.claim.Direction;
import gapwise.claim.Pairs;
import gapwise.claim.Part;
import gapwise.decision.certainty.Rating;
import gapwise.evidence.vocabulary.Method;
import gapwise.figure.value.Estimate;
import gapwise.selection.Question;
import gapwise.selection.SelectedRow;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.stream.Collectors;

/**
 * The options of a table compared by one outcome within studies, wherever some study holds two of
 * them, pair after pair: where many studies do this takes long, and whoever is stopped goes on from
 * there. Safe for use by many threads, which wait for one another.
 */
public final class WithinStudies {
  private final Answers answers;
  private final OptionTable table;
  private final Column column;
  private final Pairs asked;
  private final Deque<Both> left;
  private final List<PairWithin> told = new ArrayList<>();

  /** Two methods with the studies that hold both. */
  private record Both(Method first, Method second, Set<String> studies) {}

  public WithinStudies(Answers answers, OptionTable table, Column column) {
    this.answers = answers;
    this.table = table;
    this.column = column;
    this.asked = new Pairs(answers);
    this.left = new ArrayDeque<>(both(table, column));
  }

  private static List<Both> both(OptionTable table, Column column) {
    Map<String, Set<Method>> held = new HashMap<>();
    for (SelectedRow row : column.rows()) {
      held.computeIfAbsent(row.study().id(), id -> new HashSet<>())
          .add(row.arm().method().principal());
    }
    List<Both> pairs = new ArrayList<>();
    List<Method> methods = table.options().stream().map(Option::method).toList();
    for (int i = 0; i < methods.size(); i++) {
      for (int j = i + 1; j < methods.size(); j++) {
        Set<Method> both = Set.of(methods.get(i), methods.get(j));
        Set<String> studies =
            held.entrySet().stream()
                .filter(one -> one.getValue().containsAll(both))
                .map(Map.Entry::getKey)
                .collect(Collectors.toSet());
        if (!studies.isEmpty()) {
          pairs.add(new Both(methods.get(i), methods.get(j), studies));
        }
      }
    }
    return pairs;
  }

  /** Rows that are held while pairs are told: those of the outcome, by themselves and together. */
  public int rows() {
    return 2 * column.rows().size();
  }

  /** Whether every pair is told. */
  public synchronized boolean isDone() {
    return left.isEmpty();
  }

  /**
   * Goes on.
   *
   * @param enough asked after each pair whether to stop
   */
  public synchronized void goOn(BooleanSupplier enough) {
    while (!left.isEmpty()) {
      Both next = left.getFirst();
      Claim claim = claim(table, column, next.first(), next.second());
      asked.within(claim).map(part -> pair(claim, part, next.studies())).ifPresent(told::add);
      left.removeFirst();
      if (enough.getAsBoolean()) {
        return;
      }
    }
  }

  /** Every pair that some study compares, in order, worked out as far as it is not. */
  public synchronized List<PairWithin> all() {
    goOn(() -> false);
    return List.copyOf(told);
  }

  /** That the first has more than the second, among the groups of a table. */
  static Claim claim(OptionTable table, Column column, Method first, Method second) {
    return new Claim(
        new Claim.Side(first, column.outcome(), Optional.empty()),
        Direction.MORE,
        new Claim.Side(second, column.outcome(), Optional.empty()),
        table.asked().among(),
        Optional.empty(),
        Optional.empty(),
        Question.USUAL_MINIMUM_PATIENTS,
        table.asked().leastStatus());
  }

  private PairWithin pair(Claim claim, Part part, Set<String> studies) {
    Method first = claim.a().method();
    Method second = claim.b().method();
    OptionalDouble base = part.compared().isPresent() ? base(second) : OptionalDouble.empty();
    Optional<Estimate> difference =
        base.isPresent()
            ? part.compared().map(compared -> compared.difference(base.getAsDouble()))
            : Optional.empty();
    List<SelectedRow> rows =
        column.rows().stream()
            .filter(row -> studies.contains(row.study().id()))
            .filter(row -> List.of(first, second).contains(row.arm().method().principal()))
            .toList();
    Optional<Rating> rating =
        difference.map(
            known -> PairRating.propose(table, column, rows, part.compared().get(), known));
    return new PairWithin(
        column,
        first,
        second,
        studies.size(),
        claim,
        part,
        difference,
        rating,
        base.isPresent() ? chances(part, base.getAsDouble()) : Optional.empty());
  }

  /** What the second method has by itself, where that leaves room on both sides. */
  private OptionalDouble base(Method method) {
    for (Option option : table.options()) {
      if (option.method().equals(method)
          && table.cell(option, column) instanceof Cell.Known known) {
        MethodLine.Finding finding = known.line().finding();
        double value =
            finding instanceof MethodLine.Average average
                ? average.value().value()
                : finding instanceof MethodLine.OneSeries one ? one.value().value() : 0;
        boolean share = column.outcome().isEvent();
        return value > 0 && (!share || value < 1)
            ? OptionalDouble.of(value)
            : OptionalDouble.empty();
      }
    }
    return OptionalDouble.empty();
  }

  /** By the posterior of the ratio, where a difference that matters is named. */
  private Optional<Chances> chances(Part part, double base) {
    if (column.matters().isEmpty()
        || part.plan().isEmpty()
        || !part.plan().get().path("model").asText().equals("bayesian")) {
      return Optional.empty();
    }
    Compared compared = part.compared().orElseThrow();
    double matters = column.matters().getAsDouble();
    OptionalDouble more = compared.numberOf(base, matters);
    OptionalDouble less = compared.numberOf(base, -matters);
    ObjectNode plan = part.plan().get().deepCopy();
    plan.remove("priorSensitivity");
    ArrayNode asked = plan.putArray("probabilities");
    more.ifPresent(number -> asked.addObject().put("above", number));
    less.ifPresent(number -> asked.addObject().put("below", number));
    if (asked.isEmpty()
        || !(answers.runner().run(plan, Optional.empty()) instanceof PlanOutcome.Done done)) {
      return Optional.empty();
    }
    return SynthesisResult.of(done.result())
        .bayesian()
        .flatMap(BayesianResult::probabilities)
        .map(
            all ->
                new Chances(
                    matters,
                    more.isPresent() ? all.get(0).mean() : 0,
                    less.isPresent() ? all.get(all.size() - 1).mean() : 0));
  }
}
