package gapwise.decision.choice;

import gapwise.decision.option.Aspect;
import gapwise.decision.option.Cell;
import gapwise.decision.option.Column;
import gapwise.decision.option.Distribution;
import gapwise.decision.option.Option;
import gapwise.decision.option.OptionQuestion;
import gapwise.decision.option.OptionTable;
import gapwise.decision.situation.Situation;
import gapwise.decision.situation.Taken;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.value.Quantity;
import gapwise.search.SearchRequest;
import gapwise.selection.Question;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;

/** Tables of which the posteriors are what a test says, and everything else is nothing. */
final class Tables {
  private final List<Aspect> aspects;
  private final Map<String, Map<Aspect, Distribution>> posteriors = new HashMap<>();
  private final List<Method> methods = new ArrayList<>();

  Tables(List<Aspect> aspects) {
    this.aspects = aspects;
  }

  /** A method of which an outcome is nothing but one number. */
  Tables with(String method, Aspect aspect, double value) {
    return with(method, aspect, share -> value + (share - 0.5) * 1e-9, 2);
  }

  /** A method of which an outcome has quantiles. */
  Tables with(String method, Aspect aspect, DoubleUnaryOperator quantile, int places) {
    method(method);
    List<Double> at = new ArrayList<>();
    List<Double> below = new ArrayList<>();
    for (int i = 0; i < places; i++) {
      double share = places == 2 ? i : 0.0001 + 0.9998 * i / (places - 1.0);
      below.add(share);
      at.add(quantile.applyAsDouble(share));
    }
    posteriors
        .computeIfAbsent(method, code -> new HashMap<>())
        .put(aspect, new Distribution(at, below));
    return this;
  }

  /** A method of which nothing is known. */
  Tables method(String code) {
    Method method = Method.of(code);
    if (!methods.contains(method)) {
      methods.add(method);
    }
    return this;
  }

  OptionTable table() {
    SearchRequest all = SearchRequest.EVERYTHING;
    Situation situation =
        new Situation(
            all,
            Optional.empty(),
            Set.of(),
            Set.of(),
            Optional.empty(),
            Optional.empty(),
            OptionalInt.empty(),
            Optional.empty(),
            Optional.empty(),
            List.of());
    List<Column> columns = aspects.stream().map(aspect -> column(aspect, all)).toList();
    return new OptionTable(
        new OptionQuestion(situation, Taken.ANY, aspects, Map.of(), Map.of()),
        columns,
        methods.stream().map(this::option).toList());
  }

  private static Column column(Aspect aspect, SearchRequest all) {
    Outcome outcome = aspect.outcomes(Optional.empty()).get(0);
    Question question = Question.about(outcome, all);
    return new Column(
        aspect,
        List.of(question, question),
        outcome.isEvent() ? Quantity.of100() : Quantity.mean("months"),
        List.of(),
        OptionalDouble.empty(),
        List.of(),
        List.of());
  }

  private Option option(Method method) {
    List<Cell> cells = new ArrayList<>();
    for (Aspect aspect : aspects) {
      cells.add(aspect.appliesTo(method) ? new Cell.NotCounted(3) : new Cell.DoesNotApply());
    }
    return new Option(method, 3, cells);
  }

  /** What the test said. */
  Posteriors posteriors() {
    return (table, column) -> {
      Map<Method, Distribution> found = new HashMap<>();
      posteriors.forEach(
          (code, own) -> {
            Distribution one = own.get(column.aspect());
            if (one != null) {
              found.put(Method.of(code), one);
            }
          });
      return found;
    };
  }
}
