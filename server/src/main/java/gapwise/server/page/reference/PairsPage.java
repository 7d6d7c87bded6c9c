package gapwise.server.page.reference;

import static gapwise.sentence.Sentences.say;

import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.reference.kept.OpenPair;
import gapwise.reference.kept.ReferenceDecision;
import gapwise.reference.kept.ReferenceDecision.Settled;
import gapwise.reference.pair.Verdict;
import gapwise.server.account.Right;
import gapwise.server.address.PagePaths;
import gapwise.server.home.Evidence;
import gapwise.server.home.Home;
import gapwise.server.home.References;
import gapwise.server.job.PostedForm;
import gapwise.server.page.Place;
import gapwise.server.page.Site;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Clock;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Pairs of kept references, or of one and a study, that a person settles, one key a decision. */
public final class PairsPage {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("uuuu-MM-dd").withZone(ZoneOffset.UTC);

  private final Templates templates;
  private final Sites sites;
  private final Home home;
  private final References references;
  private final Sides sides;
  private final Clock clock;

  public PairsPage(Templates templates, Sites sites, Home home, Evidence evidence, Clock clock) {
    this.templates = templates;
    this.sites = sites;
    this.home = home;
    this.references = home.references();
    this.sides = new Sides(home.referenceBase(), evidence);
    this.clock = clock;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.REFERENCE_PAIRS, Right.EXTRACT, this::show);
    routes.post(PagePaths.REFERENCE_PAIRS, Right.EXTRACT, this::settle);
  }

  private Site site() {
    return sites.of(say("references.pairs-title"), Place.REFERENCES);
  }

  private void show(Context context) {
    String asked = Optional.ofNullable(context.queryParam("page")).orElse("");
    Optional<List<OpenPair>> open = references.open();
    PairsView view =
        open.isEmpty()
            ? new PairsView.Underway(site(), references.shelf().lines().size())
            : asked(open.get(), asked);
    templates.show(context, "reference/PairsPage", view);
  }

  private PairsView asked(List<OpenPair> open, String page) {
    Paged paging = Paged.of(page, open.size(), PagePaths.REFERENCE_PAIRS);
    return new PairsView.Asked(
        site(),
        open.size(),
        paging.of(open).stream().map(this::pair).toList(),
        paging,
        references.shelf().groups().contradictions().stream()
            .limit(Paged.MOST)
            .map(
                one ->
                    new PairsView.Contradiction(
                        sides.of(one.first()), sides.of(one.second()), words(one)))
            .toList());
  }

  private PairsView.Pair pair(OpenPair open) {
    return new PairsView.Pair(
        open.stoodOn(),
        verdict(open.verdict()),
        open.reasons(),
        open.before().map(PairsPage::words),
        sides.of(open.first()),
        sides.of(open.second()),
        SettledReferences.value(open.stoodOn(), open.first(), open.second()));
  }

  /** What is proposed, in words. */
  static String verdict(Verdict verdict) {
    return switch (verdict) {
      case SAME -> say("references.proposed-same");
      case RELATED -> say("references.proposed-related");
      case POSSIBLE -> say("references.proposed-possible");
    };
  }

  /** What was settled, by whom and why. */
  static String words(ReferenceDecision decision) {
    Map<String, String> by =
        Map.of(
            "who", decision.who(), "when", DAY.format(decision.when()), "why", decision.reason());
    return switch (decision.settled()) {
      case SAME -> say("references.settled-same", by);
      case RELATED -> say("references.settled-related", by);
      case DIFFERENT -> say("references.settled-different", by);
    };
  }

  private void settle(Context context) {
    ReferenceDecision decision =
        SettledReferences.read(new PostedForm(context), references::stoodOn, clock.instant());
    refuseContradiction(decision);
    home.referenceBase().settle(decision);
    if ("pair".equals(context.header("X-Wanted"))) {
      PairsView.Pair pair =
          new PairsView.Pair(
              decision.stoodOn(),
              "",
              List.of(),
              Optional.empty(),
              sides.of(decision.first()),
              sides.of(decision.second()),
              SettledReferences.value(decision.stoodOn(), decision.first(), decision.second()));
      templates.show(
          context, "reference/PairSettled", new PairsView.Settled(pair, words(decision)));
      return;
    }
    String back = new PostedForm(context).first("back");
    context.redirect(
        back.matches("(ref-[0-9a-f]{16})")
            ? PagePaths.KEPT_REFERENCES + "/" + back
            : PagePaths.REFERENCE_PAIRS + (back.matches("\\d{1,6}") ? "?page=" + back : ""),
        HttpStatus.SEE_OTHER);
  }

  /** Two that other decisions make one paper cannot be held apart until one of those is changed. */
  private void refuseContradiction(ReferenceDecision decision) {
    boolean own =
        references.shelf().decisions().stream()
            .anyMatch(one -> one.key().equals(decision.key()) && one.settled() == Settled.SAME);
    if (decision.settled() != Settled.SAME
        && !own
        && references.shelf().groups().areOne(decision.first(), decision.second())) {
      throw new WrongInputException(
          List.of(new Problem("settle", "contradiction", say("references.contradiction"))));
    }
  }
}
