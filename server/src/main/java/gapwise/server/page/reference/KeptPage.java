package gapwise.server.page.reference;

import static gapwise.sentence.Sentences.say;

import gapwise.curation.KeptStudy;
import gapwise.desk.Draft;
import gapwise.desk.DraftFullException;
import gapwise.desk.KeptDraft;
import gapwise.exchange.DataPackage;
import gapwise.exchange.Template;
import gapwise.reference.format.SearchLogCsv;
import gapwise.reference.kept.KeptLine;
import gapwise.reference.kept.KeptReference;
import gapwise.reference.kept.KeptSearch;
import gapwise.reference.kept.Member;
import gapwise.reference.kept.OpenPair;
import gapwise.reference.kept.ReferenceDecision;
import gapwise.reference.kept.ReferenceGroups;
import gapwise.reference.kept.Shelf;
import gapwise.reference.pair.Standing;
import gapwise.server.account.Right;
import gapwise.server.address.PagePaths;
import gapwise.server.download.Attachment;
import gapwise.server.home.Evidence;
import gapwise.server.home.Home;
import gapwise.server.page.Place;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.route.Routes;
import io.javalin.http.ConflictResponse;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Kept references listed and searched, one of them shown, and one taken to the desk. */
public final class KeptPage {
  private final Templates templates;
  private final Sites sites;
  private final Home home;
  private final Evidence evidence;
  private final Sides sides;

  public KeptPage(Templates templates, Sites sites, Home home, Evidence evidence) {
    this.templates = templates;
    this.sites = sites;
    this.home = home;
    this.evidence = evidence;
    this.sides = new Sides(home.referenceBase(), evidence);
  }

  /** Adds its routes, which must come before those of a load. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.KEPT_REFERENCES, Right.SEE, this::list);
    routes.get(PagePaths.SEARCHES_CSV, Right.SEE, this::searches);
    routes.get(PagePaths.KEPT_REFERENCES + "/{reference}", Right.SEE, this::one);
    routes.post(PagePaths.KEPT_REFERENCES + "/{reference}/draft", Right.EXTRACT, this::draft);
    routes.post(PagePaths.MARK_RETRACTED, Right.EXTRACT, this::mark);
  }

  private void list(Context context) {
    String typed = Optional.ofNullable(context.queryParam("q")).orElse("").strip();
    Shelf shelf = home.references().shelf();
    List<KeptLine> found = shelf.search(typed);
    String href = PagePaths.KEPT_REFERENCES + (typed.isEmpty() ? "" : "?q=" + Paged.encoded(typed));
    Paged paging =
        Paged.of(Optional.ofNullable(context.queryParam("page")).orElse(""), found.size(), href);
    Map<String, List<Standing>> told = home.references().standings().orElse(Map.of());
    templates.show(
        context,
        "reference/KeptPage",
        new KeptView.Listed(
            sites.of(say("references.kept-title"), Place.REFERENCES),
            typed,
            say(
                typed.isEmpty() ? "references.kept-all" : "references.kept-found",
                Map.of("found", found.size())),
            paging.of(found).stream().map(line -> line(line, shelf.groups(), told)).toList(),
            paging));
  }

  private static KeptView.Line line(
      KeptLine line, ReferenceGroups groups, Map<String, List<Standing>> told) {
    int others = (int) groups.of(line.id()).stream().filter(KeptReference::isId).count() - 1;
    return new KeptView.Line(
        Sides.href(line.id()),
        line.brief().titles().main(),
        Sides.authors(line.brief()),
        line.brief().published().year().isPresent()
            ? Integer.toString(line.brief().published().year().getAsInt())
            : "",
        line.brief()
            .published()
            .journal()
            .or(() -> line.brief().published().shortJournal())
            .orElse(""),
        others == 0
            ? ""
            : say(
                groups.leading(line.id()).equals(line.id())
                    ? "references.leads"
                    : "references.copy",
                Map.of("others", others)),
        told.getOrDefault(line.id(), List.of()).stream()
            .map(standing -> standing.kind().word())
            .toList());
  }

  private KeptReference kept(Context context) {
    return home.referenceBase()
        .find(context.pathParam("reference"))
        .orElseThrow(() -> new NotFoundResponse(say("references.no-such")));
  }

  private void one(Context context) {
    KeptReference kept = kept(context);
    Shelf shelf = home.references().shelf();
    ReferenceGroups groups = shelf.groups();
    Optional<List<OpenPair>> open = home.references().open();
    List<Standing> told =
        home.references().standings().orElse(Map.of()).getOrDefault(kept.id(), List.of());
    templates.show(
        context,
        "reference/KeptPage",
        new KeptView.One(
            sites.of(say("references.one-title"), Place.REFERENCES),
            kept.id(),
            new KeptView.Text(
                kept.title(),
                kept.authors(),
                kept.reference().published().line(),
                Sides.numbers(kept.reference()),
                kept.summary(),
                kept.reference().keywords(),
                groups.leading(kept.id()).equals(kept.id())),
            told.stream().map(KeptPage::told).toList(),
            open.isEmpty(),
            open.orElse(List.of()).stream()
                .filter(pair -> pair.first().equals(kept.id()) || pair.second().equals(kept.id()))
                .map(pair -> asked(pair, kept.id()))
                .toList(),
            kept.sources().stream().map(Sides::from).toList(),
            groups.of(kept.id()).stream()
                .filter(KeptReference::isId)
                .filter(other -> !other.equals(kept.id()))
                .map(sides::of)
                .toList(),
            groups.studies(kept.id()).stream().map(Member::ofStudy).map(sides::of).toList(),
            shelf.decisions().stream()
                .filter(one -> one.first().equals(kept.id()) || one.second().equals(kept.id()))
                .map(one -> settled(one, kept.id()))
                .toList()));
  }

  /** What became of a paper and who says so, in words. */
  public static String told(Standing standing) {
    Map<String, String> why = Map.of("why", standing.sentence());
    return switch (standing.kind()) {
      case RETRACTED -> say("references.told-retracted", why);
      case CORRECTED -> say("references.told-corrected", why);
      case CONCERN -> say("references.told-concern", why);
    };
  }

  private KeptView.AskedWith asked(OpenPair pair, String id) {
    String other = pair.first().equals(id) ? pair.second() : pair.first();
    return new KeptView.AskedWith(
        sides.of(other), PairsPage.verdict(pair.verdict()), pair.reasons());
  }

  private KeptView.SettledWith settled(ReferenceDecision decision, String id) {
    String other = decision.first().equals(id) ? decision.second() : decision.first();
    String now =
        home.references().stoodOn(decision.first(), decision.second()).orElse(decision.stoodOn());
    return new KeptView.SettledWith(
        sides.of(other),
        PairsPage.words(decision),
        SettledReferences.value(now, decision.first(), decision.second()));
  }

  private void searches(Context context) throws IOException {
    StringBuilder table = new StringBuilder();
    SearchLogCsv.write(
        home.referenceBase().searches().stream().map(KeptSearch::search).toList(), table);
    Attachment.send(context, "text/csv; charset=utf-8", DataPackage.SEARCHES, table.toString());
  }

  private void draft(Context context) {
    Draft draft =
        ReferenceDraft.of(kept(context), name -> !evidence.studies().history(name).isEmpty());
    open(context, draft);
  }

  /**
   * A draft of a study whose paper is said to be retracted, with that filled in; nobody is asked.
   */
  private void mark(Context context) {
    KeptStudy kept =
        Optional.ofNullable(context.formParam("study"))
            .filter(study -> !study.isBlank())
            .flatMap(evidence.studies()::study)
            .orElseThrow(() -> new NotFoundResponse(say("references.no-study")));
    try {
      Draft draft = Draft.of(kept.study(), kept.version());
      int row = draft.rows(Template.STUDIES).get(0).number();
      open(context, draft.withCell(row, "report_kind", "retraction", Optional.empty()));
    } catch (DraftFullException full) {
      throw new ConflictResponse(say("desk.too-large", Map.of("most", Draft.MOST_ROWS)));
    }
  }

  private void open(Context context, Draft draft) {
    KeptDraft begun = home.drafts().begin(draft, "");
    context.redirect(PagePaths.DESK + "/" + begun.id(), HttpStatus.SEE_OTHER);
  }
}
