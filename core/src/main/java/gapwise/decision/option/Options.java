package gapwise.decision.option;

import gapwise.answer.Answers;
import gapwise.answer.MethodLine;
import gapwise.answer.MethodTable;
import gapwise.answer.Told;
import gapwise.decision.certainty.Certainty;
import gapwise.decision.certainty.OneMethodRules;
import gapwise.decision.certainty.Rating;
import gapwise.decision.certainty.SeriesSeen;
import gapwise.decision.certainty.Settled;
import gapwise.decision.situation.Attribute;
import gapwise.decision.situation.Fit;
import gapwise.decision.situation.Matches;
import gapwise.decision.situation.Situation;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import gapwise.selection.Question;
import gapwise.selection.Reason;
import gapwise.selection.SelectedRow;
import gapwise.selection.Selection;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** Puts methods side by side for a situation. Safe for use by many threads. */
public final class Options {
  /** Groups of these are listed only where there are some. */
  private static final Set<String> ONLY_WITH_STUDIES =
      Set.of("other", "mixed-salvage", "combined", "amputation", "secondary-amputation");

  private static final String ALWAYS = "primary-amputation";

  private final StudySearch search;
  private final Answers answers;
  private final Function<JudgedNumber, Optional<Settled>> judgements;

  /**
   * @param search finds the studies of each method
   * @param answers answers what is asked of each outcome
   * @param judgements what persons settled of the certainty of a number
   */
  public Options(
      StudySearch search, Answers answers, Function<JudgedNumber, Optional<Settled>> judgements) {
    this.search = search;
    this.answers = answers;
    this.judgements = judgements;
  }

  /** What is reported of an aspect. */
  public Reported reported(OptionQuestion asked, Aspect aspect) {
    List<Asking> askings = askings(asked);
    Outcome outcome = outcome(asked, aspect, askings);
    List<Selection> selections = new ArrayList<>();
    Map<Method, MethodLine> found = new HashMap<>();
    for (Asking asking : askings) {
      Question question =
          Question.about(outcome, asking.among()).withLeastStatus(asked.leastStatus());
      Selection selection = answers.select(question).byMethod();
      selections.add(selection);
      lines(selection, asking.reporting(search, outcome))
          .forEach(line -> found.put(line.of().method(), line));
    }
    return new Reported(column(asked, aspect, outcome, selections, askings), found);
  }

  /**
   * The table for a question.
   *
   * @param reported what is reported of each of its aspects, in their order
   */
  public OptionTable table(OptionQuestion asked, List<Reported> reported) {
    Set<String> methods = methods(asked.situation().among());
    List<Asking> askings = askings(asked);
    List<Option> options = new ArrayList<>();
    for (Method method : Method.vocabulary().all()) {
      int studies = askings.stream().mapToInt(asking -> asking.studies(method)).sum();
      if (isListed(method, methods, studies)) {
        options.add(option(asked, method, studies, reported));
      }
    }
    return new OptionTable(asked, reported.stream().map(Reported::column).toList(), options);
  }

  /** Those whose limb is kept, and amputations. */
  private List<Asking> askings(OptionQuestion asked) {
    Set<String> methods = methods(asked.situation().among());
    return List.of(
        Asking.of(search, asked.among(), keeping(methods)),
        Asking.of(search, asked.amongAmputations(), amputations(methods)));
  }

  /** A line for each method that has rows, or of which a group reports the outcome. */
  private static List<MethodLine> lines(Selection selection, Set<Method> reporting) {
    return reporting.stream()
        .map(selection::of)
        .flatMap(
            rows -> MethodTable.column(Answers.numbers(rows), codes(reporting)).lines().stream())
        .toList();
  }

  private static Set<String> codes(Set<Method> methods) {
    return methods.stream().map(Method::code).collect(Collectors.toSet());
  }

  /** Methods that keep the limb, of those named or of all. */
  private static Set<String> keeping(Set<String> methods) {
    return codes(methods, method -> !Aspect.isAmputation(method));
  }

  private static Set<String> amputations(Set<String> methods) {
    return codes(methods, Aspect::isAmputation);
  }

  private static Set<String> codes(Set<String> named, Predicate<Method> kind) {
    return Method.vocabulary().all().stream()
        .filter(kind)
        .map(Method::code)
        .filter(code -> named.isEmpty() || named.contains(code))
        .collect(Collectors.toSet());
  }

  /** Where methods are named, amputation of every kind is put beside them. */
  private static Set<String> methods(SearchRequest among) {
    if (among.methods().isEmpty()) {
      return Set.of();
    }
    Set<String> methods = new HashSet<>(among.methods());
    methods.addAll(codes(Set.of(), Aspect::isAmputation));
    return methods;
  }

  /**
   * Primary amputation always; what is seldom reported, or not told apart, where a study has it.
   */
  private static boolean isListed(Method method, Set<String> methods, int studies) {
    if (method.code().equals(ALWAYS) || studies > 0) {
      return methods.isEmpty() || methods.contains(method.code());
    }
    return methods.isEmpty()
        ? !ONLY_WITH_STUDIES.contains(method.code())
        : methods.contains(method.code()) && !Aspect.isAmputation(method);
  }

  private static Outcome outcome(OptionQuestion asked, Aspect aspect, List<Asking> askings) {
    List<Outcome> ways = aspect.outcomes(asked.situation().infected());
    return Optional.ofNullable(asked.counted().get(aspect))
        .or(
            () ->
                // The first of those that are reported alike.
                ways.stream()
                    .max(
                        Comparator.<Outcome>comparingInt(way -> groups(askings, way))
                            .thenComparing(way -> -ways.indexOf(way))))
        .orElseThrow();
  }

  private static int groups(List<Asking> askings, Outcome outcome) {
    return askings.stream().mapToInt(asking -> asking.groups(outcome)).sum();
  }

  private static Column column(
      OptionQuestion asked,
      Aspect aspect,
      Outcome outcome,
      List<Selection> selections,
      List<Asking> askings) {
    Double named = asked.matters().get(aspect);
    List<SelectedRow> rows =
        selections.stream().flatMap(selection -> selection.rows().stream()).toList();
    return new Column(
        aspect,
        selections.stream().map(selection -> selection.fixed(selection.question())).toList(),
        Told.measure(outcome, rows),
        aspect.outcomes(asked.situation().infected()).stream()
            .filter(way -> !way.equals(outcome) && groups(askings, way) > 0)
            .toList(),
        named == null ? OptionalDouble.empty() : OptionalDouble.of(named),
        rows,
        selections.stream()
            .flatMap(selection -> selection.leftOut().stream())
            .filter(one -> one.reason() == Reason.Plain.RETRACTED)
            .toList());
  }

  private Option option(OptionQuestion asked, Method method, int studies, List<Reported> reported) {
    List<Cell> cells = new ArrayList<>();
    for (Reported one : reported) {
      Optional<MethodLine> line = Optional.ofNullable(one.lines().get(method));
      cells.add(cell(asked, method, studies, one.column(), line));
    }
    return new Option(method, studies, cells);
  }

  private Cell cell(
      OptionQuestion asked, Method method, int studies, Column column, Optional<MethodLine> line) {
    if (!column.aspect().appliesTo(method)) {
      return new Cell.DoesNotApply();
    }
    if (line.isPresent() && !line.get().rows().isEmpty()) {
      return known(asked, method, column, line.get());
    }
    if (line.isPresent() && line.get().finding() instanceof MethodLine.NothingUsable) {
      return new Cell.NothingUsable();
    }
    return studies == 0 ? new Cell.NoStudy() : new Cell.NotCounted(studies);
  }

  private Cell known(OptionQuestion asked, Method method, Column column, MethodLine line) {
    Situation situation = asked.situation();
    List<Part> parts = Part.of(line.rows());
    Set<Attribute> mattering =
        Aspect.isAmputation(method) ? situation.matteringOfAmputation() : situation.mattering();
    Fit fit =
        mattering.isEmpty()
            ? Fit.NONE
            : Fit.of(
                parts.stream()
                    .map(
                        part ->
                            new Fit.Part(
                                Matches.of(situation, part.row()).worst(mattering), part.share()))
                    .toList());
    Rating rating =
        OneMethodRules.propose(
            new OneMethodRules.Known(
                column.measure(),
                value(line),
                newCentre(line),
                column.matters(),
                parts.stream().map(part -> seen(column.outcome(), part)).toList(),
                fit,
                false));
    JudgedNumber number = JudgedNumber.of(asked, method, column.outcome());
    return new Cell.Known(
        line, fit, number, new Certainty(rating, judgements.apply(number), data(line)));
  }

  /** The records under the numbers of a line, by study, version and all. */
  private static List<String> data(MethodLine line) {
    return line.rows().stream()
        .map(one -> one.row().study().id() + ' ' + one.row().studyVersion())
        .sorted()
        .distinct()
        .toList();
  }

  private static Optional<Estimate> value(MethodLine line) {
    if (line.finding() instanceof MethodLine.Average average) {
      return Optional.of(average.value());
    }
    return line.finding() instanceof MethodLine.OneSeries one
        ? Optional.of(one.value())
        : Optional.empty();
  }

  private static Optional<Limits> newCentre(MethodLine line) {
    return line.finding() instanceof MethodLine.Average average
        ? average.newCentre()
        : Optional.empty();
  }

  private static SeriesSeen seen(Outcome outcome, Part part) {
    OptionalDouble value =
        part.value().map(one -> OptionalDouble.of(one.value())).orElse(OptionalDouble.empty());
    return new SeriesSeen(
        part.share(),
        Conduct.of(part.row(), outcome),
        value,
        part.row().speaksOf().orElse(0),
        outcome.isEvent() && value.isPresent() && value.getAsDouble() == success(outcome));
  }

  private static double success(Outcome outcome) {
    return outcome.better() == Outcome.Better.MORE ? 1 : 0;
  }
}
