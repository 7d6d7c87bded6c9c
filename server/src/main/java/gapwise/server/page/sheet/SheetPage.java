package gapwise.server.page.sheet;

import gapwise.answer.Edition;
import gapwise.decision.option.OptionQuestion;
import gapwise.decision.sheet.Sheet;
import gapwise.evidence.vocabulary.Method;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import gapwise.server.address.SheetAddress;
import gapwise.server.download.Attachment;
import gapwise.server.home.Evidence;
import gapwise.server.page.Place;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.page.part.Fetching;
import gapwise.server.report.SheetDocument;
import gapwise.server.report.SheetPdf;
import gapwise.server.report.SheetWord;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import java.time.Clock;
import java.util.List;

/**
 * The sheet of a situation: on the screen, as PDF and as a text document. What is not worked out
 * yet takes seconds, so the page comes at once and fetches it.
 */
public final class SheetPage {
  private static final String METHOD = "method";

  private final Templates templates;
  private final Sites sites;
  private final SheetMaker maker;

  /**
   * @param evidence the state of the evidence base
   * @param edition the same in words
   * @param clock says the day
   */
  public SheetPage(
      Templates templates, Sites sites, Evidence evidence, Edition edition, Clock clock) {
    this.templates = templates;
    this.sites = sites;
    this.maker = new SheetMaker(evidence, edition, clock);
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.SHEET, Right.SEE, this::show);
    routes.get(PagePaths.SHEET_SHOWN, Right.SEE, this::part);
    routes.get(PagePaths.SHEET_PDF, Right.SEE, this::pdf);
    routes.get(PagePaths.SHEET_WORD, Right.SEE, this::word);
  }

  private static SheetAddress asked(Context context) {
    return new SheetAddress(Fetching.plain(new Address(context.queryParamMap())));
  }

  private void show(Context context) {
    SheetAddress asked = asked(context);
    OptionQuestion question = asked.question();
    templates.show(
        context,
        "sheet/SheetPage",
        Sheet.methods(question).size() > Sheet.MOST
            ? choose(asked, question)
            : view(context, asked, Fetching.Way.of(new Address(context.queryParamMap()))));
  }

  private void part(Context context) {
    templates.show(context, "sheet/SheetShown", view(context, asked(context), Fetching.Way.PART));
  }

  private SheetView view(Context context, SheetAddress asked, Fetching.Way way) {
    maker.check(asked);
    var site =
        sites
            .of("Sheet for patient and team", Place.COMPARE, asked.situation())
            .keeping(PagePaths.SHEET, asked.whole());
    return way.shows(maker.pieces(asked))
        ? new SheetView.Shown(site, maker.document(asked, server(context)), SheetWays.of(asked))
        : new SheetView.Working(
            site, Fetching.of(asked.whole(), PagePaths.SHEET_SHOWN, PagePaths.SHEET));
  }

  private static String server(Context context) {
    return context.scheme() + "://" + context.host();
  }

  private SheetView choose(SheetAddress asked, OptionQuestion question) {
    return new SheetView.Choose(
        sites.of("Which methods stand on the sheet?", Place.COMPARE, asked.situation()),
        Method.vocabulary().all().stream()
            .filter(method -> !Sheet.isAmputation(method))
            .map(
                method ->
                    new SheetView.Choice(
                        method, question.situation().among().methods().contains(method.code())))
            .toList(),
        Sheet.MOST - 1,
        SheetWays.kept(asked.whole().without(List.of(METHOD))),
        asked.situation().at(PagePaths.COMPARE));
  }

  private void pdf(Context context) {
    SheetAddress asked = asked(context);
    SheetPaper paper =
        SheetPaper.on(
            asked.isOnLetter() ? SheetPaper.Size.LETTER : SheetPaper.Size.A4,
            document(context, asked),
            sites.of("Sheet", Place.COMPARE).assets().sheetStyle());
    Attachment.send(
        context,
        "application/pdf",
        "sheet.pdf",
        SheetPdf.of(templates.bytes("sheet/SheetPaper", paper)));
  }

  private void word(Context context) {
    Attachment.send(
        context,
        "application/vnd.openxmlformats-officedocument.wordprocessingml.document",
        "sheet.docx",
        SheetWord.of(document(context, asked(context))));
  }

  private SheetDocument document(Context context, SheetAddress asked) {
    maker.check(asked);
    maker.pieces(asked).all();
    return maker.document(asked, server(context));
  }
}
