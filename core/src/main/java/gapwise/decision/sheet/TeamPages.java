package gapwise.decision.sheet;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.MethodLine;
import gapwise.decision.certainty.Certainty;
import gapwise.decision.certainty.Settled;
import gapwise.decision.option.Aspect;
import gapwise.decision.option.Cell;
import gapwise.decision.option.Column;
import gapwise.decision.option.Option;
import gapwise.decision.option.OptionTable;
import gapwise.decision.sheet.TeamPage.TeamCell;
import gapwise.decision.situation.Fit;
import gapwise.decision.situation.Match;
import gapwise.decision.situation.Situation;
import gapwise.evidence.vocabulary.ExtractionStatus;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Makes the page for the team from a table. */
final class TeamPages {
  /** More labels would take the line of something else; how many there are is told anyway. */
  private static final int MOST_RETRACTED = 4;

  private TeamPages() {}

  static TeamPage of(OptionTable table, List<Option> options, Beside beside) {
    TeamComparisons comparisons = TeamComparisons.of(table, options, beside);
    List<Method> methods = options.stream().map(Option::method).toList();
    return new TeamPage(
        person(table.situation()),
        methods,
        table.columns().stream().map(column -> line(table, options, column)).toList(),
        Stream.of(Aspect.values())
            .filter(aspect -> !table.asked().aspects().contains(aspect))
            .map(Aspect::label)
            .toList(),
        followed(table, options),
        settled(table, options),
        sources(options),
        retracted(table),
        new TeamAnswers(
            comparisons.within(),
            comparisons.mattering(),
            beside
                .weighed()
                .map(one -> TeamChoices.weighed(one, methods))
                .orElse(List.of(say("sheet.weighed-off"))),
            beside
                .costed()
                .map(one -> TeamChoices.costed(one, methods))
                .orElse(List.of(say("sheet.costed-off")))));
  }

  /** How long people were followed, and how the studies behind the numbers were read. */
  private static String followed(OptionTable table, List<Option> options) {
    List<String> told = new ArrayList<>(List.of(Followed.team(table, options)));
    table.howRead(options).words().ifPresent(told::add);
    if (table.asked().leastStatus().equals(Optional.of(ExtractionStatus.AGREED))) {
      told.add(say("sheet.agreed-alone"));
    }
    return String.join(" ", told);
  }

  private static TeamPage.Line line(OptionTable table, List<Option> options, Column column) {
    String unit =
        column.measure().kind() == Quantity.Kind.OF_100
            ? say("page.of-hundred")
            : column.measure().unit();
    return new TeamPage.Line(
        column.aspect().label(),
        unit.isEmpty()
            ? column.outcome().label()
            : say("sheet.outcome", Map.of("outcome", column.outcome().label(), "unit", unit)),
        options.stream().map(option -> cell(column, table.cell(option, column))).toList());
  }

  private static TeamCell cell(Column column, Cell cell) {
    if (!(cell instanceof Cell.Known known)) {
      return TeamCell.without(cell.whyNot());
    }
    return new TeamCell(
        value(column, known),
        Values.of(known).isPresent(),
        say(
            "decision.counted-in",
            Map.of("counted", known.line().counted(), "series", known.line().series())),
        Values.newCentre(known)
            .map(
                limits ->
                    say(
                        "sheet.new-centre",
                        Map.of("limits", Shown.limits(column.measure(), limits))))
            .orElse(""),
        fit(known.fit()),
        certainty(known.certainty()));
  }

  /** A cell in one line: value, count and certainty, or why there is none. */
  static String told(OptionTable table, Option option, Column column) {
    TeamCell cell = cell(column, table.cell(option, column));
    return cell.counted().isEmpty()
        ? cell.value()
        : String.join("; ", cell.value(), cell.counted(), cell.certainty());
  }

  private static String value(Column column, Cell.Known known) {
    return Values.of(known)
        .map(one -> Shown.estimate(column.measure(), one))
        .orElseGet(() -> say("decision.no-average"));
  }

  private static String fit(Fit fit) {
    if (fit.equals(Fit.NONE)) {
      return say("sheet.fit-not-asked");
    }
    Map<Match, Integer> percents = fit.percents();
    return say(
        "sheet.fit",
        Map.of(
            "inside", percents.get(Match.INSIDE),
            "edge", percents.get(Match.EDGE),
            "unknown", percents.get(Match.UNKNOWN),
            "outside", percents.get(Match.OUTSIDE)));
  }

  private static String certainty(Certainty certainty) {
    String level = certainty.rating().level().label();
    String letters = certainty.rating().letters();
    String told = letters.isEmpty() ? level : level + ' ' + letters;
    return certainty.isSettled() ? say("sheet.settled", Map.of("certainty", told)) : told;
  }

  private static List<String> settled(OptionTable table, List<Option> options) {
    List<String> settled = new ArrayList<>();
    for (Option option : options) {
      for (Column column : table.columns()) {
        if (table.cell(option, column) instanceof Cell.Known known
            && known.certainty().settled().isPresent()) {
          settled.add(settled(option, column, known.certainty()));
        }
      }
    }
    return settled;
  }

  private static String settled(Option option, Column column, Certainty certainty) {
    Settled one = certainty.settled().orElseThrow();
    return say(
        certainty.isOutdated() ? "sheet.settled-before" : "sheet.settled-by",
        Map.of(
            "method", option.method().shortLabel(),
            "outcome", column.aspect().label(),
            "who", one.who(),
            "when", LocalDate.ofInstant(one.when(), ZoneOffset.UTC).toString(),
            "reason", one.judgement().reason()));
  }

  private static List<TeamPage.Source> sources(List<Option> options) {
    Map<String, TeamPage.Source> sources = new TreeMap<>();
    for (Option option : options) {
      for (Cell cell : option.cells()) {
        if (cell instanceof Cell.Known known) {
          known.line().rows().forEach(one -> put(sources, one));
        }
      }
    }
    return List.copyOf(sources.values());
  }

  /** In the words of the table's page. */
  private static List<String> person(Situation situation) {
    List<String> person = new ArrayList<>();
    situation
        .age()
        .ifPresent(age -> person.add(say("decision.age", Map.of("age", Integer.toString(age)))));
    if (situation.smoker().equals(Optional.of(YesOrNo.YES))) {
      person.add(say("decision.smokes"));
    }
    if (situation.diabetes().equals(Optional.of(YesOrNo.YES))) {
      person.add(say("decision.diabetes"));
    }
    return person;
  }

  /** Labels of publications, each once however many of its groups and outcomes are left out. */
  private static String retracted(OptionTable table) {
    Map<String, String> labels = new TreeMap<>();
    table.columns().stream()
        .flatMap(column -> column.retracted().stream())
        .forEach(one -> labels.putIfAbsent(one.studyId(), one.label()));
    return labels.isEmpty()
        ? say("sheet.retracted-none")
        : say(
            "sheet.retracted",
            Map.of(
                "studies",
                labels.values().stream().limit(MOST_RETRACTED).collect(Collectors.joining(", ")),
                "number",
                labels.size()));
  }

  private static void put(Map<String, TeamPage.Source> sources, MethodLine.Weighed one) {
    String name = one.row().studyName();
    String id = one.row().study().id();
    sources.put(name + ' ' + id, new TeamPage.Source(id, name));
  }
}
