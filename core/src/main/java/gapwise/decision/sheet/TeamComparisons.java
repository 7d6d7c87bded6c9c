package gapwise.decision.sheet;

import static gapwise.sentence.Sentences.say;

import gapwise.decision.certainty.Rating;
import gapwise.decision.option.Column;
import gapwise.decision.option.Differing;
import gapwise.decision.option.Option;
import gapwise.decision.option.OptionTable;
import gapwise.decision.option.PairApart;
import gapwise.decision.option.PairWithin;
import gapwise.evidence.vocabulary.Method;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * The methods of a sheet against each other, in the order of the table and never of the result.
 *
 * @param table the numbers
 * @param methods those on the sheet
 * @param beside the comparisons of the whole table
 */
record TeamComparisons(OptionTable table, List<Method> methods, Beside beside) {
  /** Of more pairs nobody keeps the thread; the rest stand on the page of the table. Our choice. */
  private static final int MOST = 8;

  static TeamComparisons of(OptionTable table, List<Option> options, Beside beside) {
    return new TeamComparisons(table, options.stream().map(Option::method).toList(), beside);
  }

  /** Differences within studies with how certain they are. */
  Listed within() {
    List<PairWithin> pairs =
        beside.within().stream().filter(pair -> isHere(pair.first(), pair.second())).toList();
    if (pairs.isEmpty()) {
      return Listed.only(say("sheet.within-none"));
    }
    List<String> told =
        pairs.stream()
            .filter(pair -> pair.difference().isPresent() && pair.rating().isPresent())
            .map(TeamComparisons::within)
            .toList();
    int silent = pairs.size() - told.size();
    return Listed.of(
        List.of(),
        told,
        MOST,
        silent == 0 ? List.of() : List.of(say("sheet.within-no-number", Map.of("pairs", silent))));
  }

  private boolean isHere(Method first, Method second) {
    return methods.contains(first) && methods.contains(second);
  }

  private static String within(PairWithin pair) {
    Rating rating = pair.rating().orElseThrow();
    String letters = rating.letters();
    return say(
        "sheet.within",
        Map.of(
            "outcome",
            pair.column().aspect().label(),
            "first",
            pair.first().shortLabel(),
            "second",
            pair.second().shortLabel(),
            "difference",
            Differing.words(pair.column(), pair.difference().orElseThrow()),
            "studies",
            pair.studies(),
            "certainty",
            letters.isEmpty() ? rating.level().label() : rating.level().label() + ' ' + letters));
  }

  /** The differences that were named, and how probable they are. */
  Listed mattering() {
    List<Column> named =
        table.columns().stream().filter(column -> column.matters().isPresent()).toList();
    if (named.isEmpty()) {
      return Listed.only(say("sheet.matters-none"));
    }
    List<String> chances = new ArrayList<>();
    beside.within().stream()
        .filter(pair -> isHere(pair.first(), pair.second()) && pair.chances().isPresent())
        .map(TeamComparisons::chancesWithin)
        .forEach(chances::add);
    beside.apart().stream()
        .filter(pair -> isHere(pair.first(), pair.second()))
        .map(TeamComparisons::chancesApart)
        .forEach(chances::add);
    return Listed.of(
        List.of(
            say(
                "sheet.matters-named",
                Map.of(
                    "differences",
                    named.stream().map(TeamComparisons::named).collect(Collectors.joining(", "))))),
        chances,
        MOST,
        chances.isEmpty() ? List.of(say("sheet.chances-none")) : List.of());
  }

  private static String named(Column column) {
    return say(
        "sheet.matters",
        Map.of(
            "outcome", column.aspect().label(),
            "difference", Differing.mattering(column, column.matters().orElseThrow())));
  }

  private static String chancesWithin(PairWithin pair) {
    return say(
        "sheet.chances-within",
        Map.of(
            "outcome",
            pair.column().aspect().label(),
            "chances",
            Differing.chances(
                pair.column(), pair.first(), pair.second(), pair.chances().orElseThrow())));
  }

  private static String chancesApart(PairApart pair) {
    return say(
        "sheet.chances-apart",
        Map.of(
            "outcome", pair.column().aspect().label(),
            "chances",
                Differing.chances(pair.column(), pair.first(), pair.second(), pair.chances())));
  }
}
