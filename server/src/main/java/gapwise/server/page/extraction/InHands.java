package gapwise.server.page.extraction;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.Reading;
import gapwise.exchange.TemplateWords;
import gapwise.extraction.Difference;
import gapwise.extraction.FieldChoice;
import gapwise.extraction.ReadRow;
import gapwise.extraction.Reconciliation;
import gapwise.extraction.RowPair;
import gapwise.extraction.Side;
import gapwise.screening.Reader;
import gapwise.server.address.Address;
import gapwise.server.address.PageBoxes;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Differences as the page of one who settles shows them.
 *
 * @param both the extractions
 * @param versions of what was settled, by the key of the difference
 * @param who who settles
 */
record InHands(Reconciliation both, Map<String, Integer> versions, Reader who) {
  /** The difference that an address names, else the first open one. */
  Optional<Difference> asked(String key) {
    return both.compared().difference(key).or(() -> both.open().stream().findFirst());
  }

  /** The first open one after another, else the first open one. */
  Optional<Difference> after(String key) {
    List<String> keys = both.compared().differences().stream().map(Difference::key).toList();
    int at = keys.indexOf(key);
    return both.open().stream()
        .filter(one -> keys.indexOf(one.key()) > at)
        .findFirst()
        .or(() -> both.open().stream().findFirst());
  }

  String href(Difference one) {
    return new Address(Map.of(Person.WHO, List.of(who.name()), "at", List.of(one.key())))
        .at(ExtractionAddress.of(both.paper().study()) + "/settle");
  }

  SettleView.InHand inHand(Difference one) {
    List<Difference> all = both.compared().differences();
    int at = all.indexOf(one);
    return new SettleView.InHand(
        one.key(),
        versions.getOrDefault(one.key(), 0),
        Lines.where(one.pair()),
        Lines.field(one),
        one.column()
            .map(column -> TemplateWords.said(one.pair().sheet(), column.description()))
            .orElse(say("extraction.whole-row-hint")),
        value(one, Side.FIRST),
        value(one, Side.SECOND),
        one.column().filter(column -> one.takesThird()),
        together(one),
        both.choice(one).map(choice -> so(one, choice)).orElse(""),
        rows(one.pair()),
        new SettleView.Ways(
            at > 0 ? Optional.of(href(all.get(at - 1))) : Optional.empty(),
            at + 1 < all.size() ? Optional.of(href(all.get(at + 1))) : Optional.empty()));
  }

  private String together(Difference one) {
    return both.compared().together(one).stream()
        .filter(other -> !other.equals(one))
        .map(Lines::field)
        .collect(Collectors.joining(", "));
  }

  private static String so(Difference one, FieldChoice choice) {
    String value = Lines.shown(one.column(), choice.value());
    return say(
        "extraction.so-far",
        Map.of(
            "value",
            value.isEmpty() ? say("extraction.nothing") : value,
            "name",
            choice.who().name()));
  }

  private SettleView.Value value(Difference one, Side side) {
    Difference.Value value = one.value(side);
    String name = both.paper().reader(side).name();
    return new SettleView.Value(
        name,
        Lines.shown(one.column(), value.text()),
        value.unit(),
        label(one, side, name),
        value.place(),
        value.words(),
        value.reading().map(InHands::page));
  }

  private static String label(Difference one, Side side, String name) {
    Optional<Side> only = one.pair().only();
    if (one.column().isEmpty() && only.isPresent()) {
      return only.get() == side ? say("extraction.keep-row") : say("extraction.leave-row");
    }
    return say("extraction.take", Map.of("name", name));
  }

  private static SettleView.Page page(Reading reading) {
    String href = PageBoxes.at(reading);
    int query = href.indexOf('?');
    return new SettleView.Page(
        reading.page(), href, href.substring(0, query) + "/part" + href.substring(query));
  }

  private SettleView.Rows rows(RowPair pair) {
    int mine = pair.first().map(ReadRow::number).orElse(0);
    int hers = pair.second().map(ReadRow::number).orElse(0);
    Optional<Side> only = pair.only();
    List<SettleView.Other> others =
        only.isEmpty()
            ? List.of()
            : both.compared().pairs().stream()
                .filter(other -> other.sheet().equals(pair.sheet()))
                .filter(other -> other.only().equals(Optional.of(only.get().other())))
                .map(other -> new SettleView.Other(other.any().number(), Lines.where(other)))
                .toList();
    boolean study = pair.named().isEmpty();
    return new SettleView.Rows(
        pair.sheet(), mine, hers, others, only.isEmpty() && !study ? hers : 0);
  }

  /** Every difference, with a link to it. */
  List<SettleView.Field> fields(Optional<Difference> hand) {
    return both.compared().differences().stream()
        .map(
            one ->
                new SettleView.Field(
                    href(one),
                    Lines.where(one.pair()) + ": " + Lines.field(one),
                    both.choice(one).map(choice -> so(one, choice)).orElse(""),
                    hand.filter(one::equals).isPresent()))
        .toList();
  }

  List<SettleView.Alike> alike() {
    return both.compared().alike().stream()
        .map(
            one ->
                new SettleView.Alike(
                    Lines.where(one.pair()),
                    one.column().title(),
                    Lines.shown(Optional.of(one.column()), one.text())))
        .toList();
  }
}
