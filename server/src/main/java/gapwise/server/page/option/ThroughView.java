package gapwise.server.page.option;

import static gapwise.sentence.Sentences.say;

import gapwise.claim.Part;
import gapwise.decision.option.Column;
import gapwise.decision.option.OptionQuestion;
import gapwise.decision.option.OptionTable;
import gapwise.decision.option.PairThrough;
import gapwise.decision.option.ThroughOthers;
import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import gapwise.server.home.Pieces;
import gapwise.server.home.RememberedOptions;
import gapwise.server.page.part.Fetching;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** What networks of studies and adjusting say of the methods of a table. */
public sealed interface ThroughView {
  /** The name that asks for it together with the page, for browsers without script. */
  String THROUGH = "through";

  /** It is not worked out yet, and fetched. */
  record Working(Fetching fetching) implements ThroughView {}

  /**
   * It is worked out.
   *
   * @param told one line a pair of an outcome; none where no network joins any and none is adjusted
   * @param tooMany outcomes after which too many methods are known to tell all pairs
   */
  record Shown(List<Line> told, List<String> tooMany) implements ThroughView {}

  /**
   * A pair.
   *
   * @param outcome what is compared
   * @param kind by what
   * @param sentence what it says
   * @param href the claim, with its plan and every other analysis
   */
  record Line(String outcome, String kind, String sentence, String href) {}

  static ThroughView of(
      RememberedOptions options, OptionQuestion question, Address address, Fetching.Way way) {
    if (!way.shows(Pieces.ofThrough(options, question))) {
      return new Working(
          Fetching.of(address.with(THROUGH, "yes"), PagePaths.COMPARE_THROUGH, PagePaths.COMPARE));
    }
    OptionTable table = options.table(question);
    List<Line> told = new ArrayList<>();
    List<String> tooMany = new ArrayList<>();
    for (Column column : table.columns()) {
      if (ThroughOthers.known(table, column).size() > ThroughOthers.MOST_METHODS) {
        tooMany.add(column.aspect().label());
      }
      options
          .through(question, column.aspect())
          .forEach(pair -> told.addAll(lines(question, pair)));
    }
    return new Shown(told, tooMany);
  }

  private static List<Line> lines(OptionQuestion question, PairThrough pair) {
    String href = SeriesBehind.claim(question, pair.column(), pair.first(), pair.second());
    List<Line> lines = new ArrayList<>();
    pair.through()
        .indirect()
        .ifPresent(part -> lines.add(line(pair, say("page.by-network"), part, href)));
    pair.through().adjusted().ifPresent(part -> lines.add(line(pair, part.heading(), part, href)));
    pair.through()
        .byPatients()
        .ifPresent(part -> lines.add(line(pair, part.heading(), part, href)));
    return lines;
  }

  private static Line line(PairThrough pair, String kind, Part part, String href) {
    return new Line(
        pair.column().aspect().label(),
        kind,
        say(
            "page.pair-says",
            Map.of(
                "first", pair.first().shortLabel(),
                "second", pair.second().shortLabel(),
                "told", part.sentences().get(0))),
        href);
  }
}
