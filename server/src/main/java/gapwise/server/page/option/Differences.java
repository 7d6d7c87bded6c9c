package gapwise.server.page.option;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.ComparisonAlert;
import gapwise.decision.certainty.CertaintyWords;
import gapwise.decision.certainty.Rating;
import gapwise.decision.option.Column;
import gapwise.decision.option.Differing;
import gapwise.decision.option.OptionTable;
import gapwise.decision.option.PairApart;
import gapwise.decision.option.PairWithin;
import gapwise.evidence.vocabulary.Method;
import gapwise.selection.SelectedRow;
import gapwise.server.home.RememberedOptions.Compared;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The options against each other: within studies, as separate groups, and what stands against
 * reading those as a comparison.
 *
 * @param within comparisons within studies
 * @param apart separate groups against a difference that matters
 * @param groups what differs between the groups of patients; empty where fewer than two methods
 *     have any
 */
public record Differences(
    List<Within> within, List<Apart> apart, Optional<ComparisonAlert> groups) {

  /**
   * One comparison within studies.
   *
   * @param outcome what is compared
   * @param first a method
   * @param second against another
   * @param studies how many studies
   * @param words what they say
   * @param difference first less second, with its interval; empty where not known
   * @param level how certain it is; empty without a difference
   * @param reasons what lowers that
   * @param chances of a difference that matters; empty where none is named
   * @param href the claim, with its plan and every other analysis
   */
  public record Within(
      String outcome,
      Method first,
      Method second,
      String studies,
      String words,
      String difference,
      String level,
      String reasons,
      String chances,
      String href) {}

  /** Two separate groups. */
  public record Apart(String outcome, Method first, Method second, String chances) {}

  static Differences of(OptionTable table, Compared compared) {
    Map<List<String>, SelectedRow> groups = new LinkedHashMap<>();
    table.columns().stream()
        .flatMap(column -> column.rows().stream())
        .forEach(row -> groups.putIfAbsent(List.of(row.study().id(), row.arm().id()), row));
    return new Differences(
        compared.within().stream().map(pair -> within(table, pair)).toList(),
        compared.apart().stream().map(Differences::apart).toList(),
        ComparisonAlert.of(List.copyOf(groups.values())));
  }

  private static Within within(OptionTable table, PairWithin pair) {
    Column column = pair.column();
    return new Within(
        column.aspect().label(),
        pair.first(),
        pair.second(),
        say("decision.studies", Map.of("studies", pair.studies())),
        pair.rating().map(rating -> words(pair, rating)).orElse(pair.part().sentences().get(0)),
        pair.difference().map(known -> Differing.words(column, known)).orElse(""),
        pair.rating().map(rating -> rating.level().label()).orElse(""),
        pair.rating().map(Rating::letters).orElse(""),
        pair.chances()
            .map(chances -> Differing.chances(column, pair.first(), pair.second(), chances))
            .orElse(""),
        SeriesBehind.claim(table.asked(), column, pair.first(), pair.second()));
  }

  /** Of events in words by certainty; else the number alone. */
  private static String words(PairWithin pair, Rating rating) {
    Column column = pair.column();
    double matters = column.matters().orElseGet(() -> column.aspect().usuallyMatters().orElse(0));
    return column
        .outcome()
        .event()
        .filter(event -> matters > 0)
        .map(
            event ->
                CertaintyWords.difference(
                    rating.level(),
                    CertaintyWords.Size.of(pair.difference().orElseThrow().value(), matters),
                    pair.difference().orElseThrow().value() > 0,
                    event.such()))
        .orElse("");
  }

  private static Apart apart(PairApart pair) {
    return new Apart(
        pair.column().aspect().label(),
        pair.first(),
        pair.second(),
        Differing.chances(pair.column(), pair.first(), pair.second(), pair.chances()));
  }
}
