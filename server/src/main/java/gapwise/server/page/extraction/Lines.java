package gapwise.server.page.extraction;

import static gapwise.sentence.Sentences.say;

import gapwise.exchange.TemplateColumn;
import gapwise.exchange.TemplateWords;
import gapwise.extraction.Difference;
import gapwise.extraction.FieldChoice;
import gapwise.extraction.Reconciliation;
import gapwise.extraction.RowPair;
import gapwise.extraction.Side;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What differed between two people, in words. */
public final class Lines {
  private Lines() {}

  /** Every field that differed, in the order of the template. */
  public static List<PaperView.Line> of(Reconciliation both) {
    return both.compared().differences().stream().map(one -> line(both, one)).toList();
  }

  private static PaperView.Line line(Reconciliation both, Difference one) {
    return new PaperView.Line(
        where(one.pair()),
        field(one),
        withUnit(one, Side.FIRST),
        withUnit(one, Side.SECOND),
        both.choice(one).map(choice -> settled(both, one, choice)));
  }

  /** A number with its unit, or with what it counts, so that 5.2 cm is not read beside 52. */
  private static String withUnit(Difference one, Side side) {
    String text = shown(one.column(), one.value(side).text());
    String unit = one.value(side).unit();
    return text.isEmpty() || unit.isEmpty() ? text : text + " " + unit;
  }

  private static PaperView.Settled settled(
      Reconciliation both, Difference one, FieldChoice choice) {
    return new PaperView.Settled(
        switch (choice.taken()) {
          case FIRST -> withUnit(one, Side.FIRST);
          case SECOND -> withUnit(one, Side.SECOND);
          case THIRD -> shown(one.column(), choice.value());
        },
        whose(both, one, choice),
        choice.why(),
        choice.who().name());
  }

  private static String whose(Reconciliation both, Difference one, FieldChoice choice) {
    return switch (choice.taken()) {
      case FIRST -> taken(both, one, Side.FIRST);
      case SECOND -> taken(both, one, Side.SECOND);
      case THIRD -> say("extraction.a-third-value");
    };
  }

  private static String taken(Reconciliation both, Difference one, Side side) {
    Optional<Side> only = one.pair().only();
    if (one.column().isEmpty() && only.isPresent()) {
      return only.get() == side ? say("extraction.row-stays") : say("extraction.row-goes");
    }
    return say("extraction.as-read-by", Map.of("name", both.paper().reader(side).name()));
  }

  /** The row of a field, for people. */
  static String where(RowPair pair) {
    String part = TemplateWords.part(pair.sheet());
    String named = String.join(", ", pair.inWords());
    return named.isEmpty() ? part : part + " " + named;
  }

  static String field(Difference one) {
    return one.column().map(TemplateColumn::title).orElse(say("extraction.whole-row"));
  }

  /**
   * A code by its name, where the field has a list of words. Where a field takes several, which are
   * typed and not chosen, what would be typed stands beside them.
   */
  static String shown(Optional<TemplateColumn> column, String text) {
    String words = column.map(known -> known.inWords(text)).orElse(text);
    boolean typed = column.filter(TemplateColumn::several).isPresent() && !words.equals(text);
    return typed ? words + " (" + text + ")" : words;
  }

  /** Who read, who settled and how much differed, as sentences. */
  public static List<String> told(Reconciliation both) {
    int alike = both.compared().alike().size();
    int differ = both.compared().differences().size();
    String settler = both.paper().settling().orElseThrow().who().name();
    return List.of(
        say(
            "extraction.told-alike",
            Map.of(
                "first", both.paper().first().name(),
                "second", both.paper().second().name(),
                "alike", alike,
                "differ", differ,
                "settled", both.choices().size())),
        both.isSettledByOneOfBoth()
            ? say("extraction.settled-by-one", Map.of("name", settler))
            : say("extraction.settled-by-third", Map.of("name", settler)));
  }
}
