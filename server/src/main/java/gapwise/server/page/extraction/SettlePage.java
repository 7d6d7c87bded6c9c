package gapwise.server.page.extraction;

import static gapwise.sentence.Sentences.say;

import gapwise.curation.ExtractionBase;
import gapwise.desk.AgreedDraft;
import gapwise.desk.Draft;
import gapwise.desk.DraftCheck;
import gapwise.desk.Noted;
import gapwise.exchange.Template;
import gapwise.exchange.TemplateColumn;
import gapwise.exchange.TemplateWords;
import gapwise.extraction.AgreedRows;
import gapwise.extraction.Difference;
import gapwise.extraction.FieldChoice;
import gapwise.extraction.FieldChoice.Taken;
import gapwise.extraction.Reconciliation;
import gapwise.extraction.SameRow;
import gapwise.extraction.TwiceRead;
import gapwise.screening.Reader;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.home.Home;
import gapwise.server.job.PostedForm;
import gapwise.server.page.Place;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.route.Routes;
import io.javalin.http.ConflictResponse;
import io.javalin.http.Context;
import io.javalin.http.ForbiddenResponse;
import io.javalin.http.HttpStatus;
import java.time.Clock;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/** What two people read differently, settled field by field, one key a choice. */
public final class SettlePage {
  private static final String SETTLE = ExtractionAddress.PAPER + "/settle";

  /** Longest third value; a workbook's cell takes 32,767 letters. */
  private static final int MOST_LETTERS = 20_000;

  private static final Pattern NUMBER = Pattern.compile("\\d{1,7}");

  private final Templates templates;
  private final Sites sites;
  private final Home home;
  private final Clock clock;

  public SettlePage(Templates templates, Sites sites, Home home, Clock clock) {
    this.templates = templates;
    this.sites = sites;
    this.home = home;
    this.clock = clock;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(SETTLE, Right.SETTLE, this::show);
    routes.post(SETTLE, Right.SETTLE, this::settle);
    routes.post(SETTLE + "/rows", Right.SETTLE, this::rows);
  }

  /** Both extractions, while the person who asks settles them. */
  static Reconciliation settledBy(Home home, TwiceRead paper, Reader who) {
    if (paper.stage() != TwiceRead.Stage.BEING_SETTLED) {
      throw new ConflictResponse(say("extraction.not-being-settled"));
    }
    Reader settler = paper.settling().orElseThrow().who();
    if (!settler.key().equals(who.key())) {
      throw new ForbiddenResponse(say("extraction.settles", Map.of("name", settler.name())));
    }
    return home.extractions()
        .reconciliation(paper.study())
        .orElseThrow(() -> new ConflictResponse(say("extraction.not-being-settled")));
  }

  private void show(Context context) {
    TwiceRead paper = PaperPage.paper(home, context).paper();
    Optional<Reader> who = Person.of(context);
    if (who.isEmpty() || paper.stage() != TwiceRead.Stage.BEING_SETTLED) {
      context.redirect(ExtractionAddress.of(paper.study()), HttpStatus.SEE_OTHER);
      return;
    }
    Reconciliation both = settledBy(home, paper, who.get());
    InHands hands = new InHands(both, home.extractions().versions(paper.study()), who.get());
    String at = new Address(context.queryParamMap()).first("at");
    Optional<Difference> hand = hands.asked(at);
    int open = both.open().size();
    templates.show(
        context,
        "extraction/SettlePage",
        new SettleView(
            sites.of(say("extraction.settle-title"), Place.EXTRACTION),
            ExtractionAddress.of(paper.study()),
            paper.study(),
            who.get().name(),
            Lines.told(both),
            open,
            hand.map(hands::inHand),
            hands.fields(hand),
            hands.alike(),
            open == 0 ? Optional.of(FinishPage.finish(home, both)) : Optional.empty()));
  }

  private void settle(Context context) {
    PostedForm form = new PostedForm(context);
    Reader who = Person.of(form);
    TwiceRead paper = PaperPage.paper(home, context).paper();
    Reconciliation both = settledBy(home, paper, who);
    Difference one =
        both.compared()
            .difference(form.first("difference"))
            .orElseThrow(() -> new ConflictResponse(say("extraction.no-difference")));
    Taken taken = taken(form.first("take"), one);
    List<Difference> together = taken == Taken.THIRD ? List.of(one) : both.compared().together(one);
    String why = why(form, together.stream().anyMatch(other -> other.asksWhy(taken)));
    String third = third(form, taken);
    List<FieldChoice> choices =
        together.stream()
            .map(
                other ->
                    FieldChoice.of(paper.study(), other, taken, third, why, who, clock.instant()))
            .toList();
    if (taken == Taken.THIRD) {
      refuseUnreadable(both, one, choices.get(0));
    }
    Map<String, Integer> seen = new HashMap<>(home.extractions().versions(paper.study()));
    seen.put(one.key(), number(form.first("seen")));
    if (!home.extractions().base().settle(paper.study(), choices, seen)) {
      throw new ConflictResponse(say("extraction.settled-meanwhile"));
    }
    back(context, paper, who, one.key());
  }

  /** On to the next that nobody settled. */
  private void back(Context context, TwiceRead paper, Reader who, String after) {
    Optional<Difference> next =
        home.extractions()
            .reconciliation(paper.study())
            .flatMap(both -> new InHands(both, Map.of(), who).after(after));
    Address address = new Address(Map.of(Person.WHO, List.of(who.name())));
    context.redirect(
        next.map(one -> address.with("at", one.key()))
            .orElse(address)
            .at(ExtractionAddress.of(paper.study()) + "/settle"),
        HttpStatus.SEE_OTHER);
  }

  private static Taken taken(String word, Difference one) {
    for (Taken taken : Taken.values()) {
      boolean offered = taken != Taken.THIRD || one.takesThird();
      if (taken.name().toLowerCase(Locale.ROOT).equals(word) && offered) {
        return taken;
      }
    }
    throw Person.wrong("take", "unknown-choice", say("extraction.unknown-choice"));
  }

  private static String why(PostedForm form, boolean asked) {
    String why = form.first("why");
    if (why.length() > FieldChoice.LONGEST_WHY || (asked && why.isBlank())) {
      throw Person.wrong(
          "why", "missing-value", say("extraction.why", Map.of("most", FieldChoice.LONGEST_WHY)));
    }
    return why;
  }

  private static String third(PostedForm form, Taken taken) {
    String value = taken == Taken.THIRD ? form.first("value") : "";
    if (value.length() > MOST_LETTERS) {
      throw Person.wrong(
          "value", "text-too-long", say("desk.too-long", Map.of("letters", value.length())));
    }
    return value;
  }

  /** A third value is read as the desk reads a field, by the same rules and in the same words. */
  private static void refuseUnreadable(Reconciliation both, Difference one, FieldChoice choice) {
    Map<String, FieldChoice> with = new HashMap<>(both.choices());
    with.put(choice.difference(), choice);
    Draft draft =
        AgreedDraft.of(
            both.paper().study(),
            0,
            AgreedRows.of(both.compared(), with, false),
            both.both(),
            List.of());
    String column = one.column().map(TemplateColumn::name).orElseThrow();
    DraftCheck.of(draft).noted().stream()
        .filter(noted -> noted.weight() == Noted.Weight.IMPOSSIBLE)
        .filter(noted -> noted.columns().contains(column))
        .filter(
            noted ->
                noted.row().isPresent()
                    && draft
                        .row(noted.row().getAsInt())
                        .filter(row -> row.text(column).equals(choice.value()))
                        .isPresent())
        .findFirst()
        .ifPresent(
            noted -> {
              throw Person.wrong(
                  "value", noted.code(), TemplateWords.said(one.pair().sheet(), noted.message()));
            });
  }

  private void rows(Context context) {
    PostedForm form = new PostedForm(context);
    Reader who = Person.of(form);
    TwiceRead paper = PaperPage.paper(home, context).paper();
    Reconciliation both = settledBy(home, paper, who);
    String sheet = form.first("sheet");
    int first = number(form.first("first"));
    int second = number(form.first("second"));
    boolean known =
        Template.names().contains(sheet)
            && both.compared().pairs().stream()
                .filter(pair -> pair.sheet().equals(sheet))
                .anyMatch(pair -> pair.first().filter(row -> row.number() == first).isPresent())
            && both.compared().pairs().stream()
                .filter(pair -> pair.sheet().equals(sheet))
                .anyMatch(pair -> pair.second().filter(row -> row.number() == second).isPresent());
    if (!known) {
      throw new ConflictResponse(say("extraction.no-difference"));
    }
    ExtractionBase base = home.extractions().base();
    boolean same = !form.first("same").equals("no");
    if (!base.say(new SameRow(paper.study(), sheet, first, second, same, who, clock.instant()))) {
      throw new ConflictResponse(say("extraction.not-being-settled"));
    }
    back(context, paper, who, form.first("difference"));
  }

  private static int number(String text) {
    return NUMBER.matcher(text).matches() ? Integer.parseInt(text) : 0;
  }
}
