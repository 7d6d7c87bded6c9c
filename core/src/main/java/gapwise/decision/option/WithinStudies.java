package gapwise.decision.option;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome;
import gapwise.analysis.bayesian.BayesianResult;
import gapwise.analysis.synthesis.SynthesisResult;
import gapwise.answer.Answers;
import gapwise.answer.MethodLine;
import gapwise.claim.Claim;
import gapwise.claim.Claims;
import gapwise.claim.Compared;
import gapwise.claim.Direction;
import gapwise.claim.Part;
import gapwise.decision.certainty.Rating;
import gapwise.evidence.vocabulary.Method;
import gapwise.figure.value.Estimate;
import gapwise.selection.Question;
import gapwise.selection.SelectedRow;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

/** The options of a table compared within studies, wherever some study holds two of them. */
public final class WithinStudies {
  private final Answers answers;
  private final Claims claims;

  public WithinStudies(Answers answers) {
    this.answers = answers;
    this.claims = new Claims(answers);
  }

  /** Every pair of every outcome that some study compares, by outcome and then in order. */
  public List<PairWithin> of(OptionTable table) {
    List<PairWithin> pairs = new ArrayList<>();
    for (Column column : table.columns()) {
      Map<String, Set<Method>> held = new HashMap<>();
      for (SelectedRow row : column.rows()) {
        held.computeIfAbsent(row.study().id(), id -> new HashSet<>())
            .add(row.arm().method().principal());
      }
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
            pair(table, column, methods.get(i), methods.get(j), studies).ifPresent(pairs::add);
          }
        }
      }
    }
    return pairs;
  }

  private Optional<PairWithin> pair(
      OptionTable table, Column column, Method first, Method second, Set<String> studies) {
    Claim claim = claim(table, column, first, second);
    return claims.within(claim).map(part -> pair(table, column, claim, part, studies));
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

  private PairWithin pair(
      OptionTable table, Column column, Claim claim, Part part, Set<String> studies) {
    Method first = claim.a().method();
    Method second = claim.b().method();
    OptionalDouble base =
        part.compared().isPresent() ? base(table, column, second) : OptionalDouble.empty();
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
        base.isPresent() ? chances(column, part, base.getAsDouble()) : Optional.empty());
  }

  /** What the second method has by itself, where that leaves room on both sides. */
  private static OptionalDouble base(OptionTable table, Column column, Method method) {
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
  private Optional<Chances> chances(Column column, Part part, double base) {
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
