package gapwise.server.page.sheet;

import gapwise.answer.Edition;
import gapwise.decision.option.OptionQuestion;
import gapwise.decision.sheet.Sheet;
import gapwise.decision.sheet.Since;
import gapwise.evidence.vocabulary.Method;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.server.address.Address;
import gapwise.server.address.OptionAddress;
import gapwise.server.address.PagePaths;
import gapwise.server.download.Attachment;
import gapwise.server.home.Evidence;
import gapwise.server.page.Place;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.report.Prepared;
import gapwise.server.report.SheetDocument;
import gapwise.server.report.SheetPdf;
import gapwise.server.report.SheetWord;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/** The sheet of a situation: on the screen, as PDF and as a text document. */
public final class SheetPage {
  /** The number of the change from which a sheet was printed. */
  static final String MADE = "made";

  private static final String PAPER = "paper";
  private static final String LETTER = "letter";

  private final Templates templates;
  private final Sites sites;
  private final Evidence evidence;
  private final Edition edition;
  private final Clock clock;

  /**
   * @param evidence the state of the evidence base
   * @param edition the same in words
   * @param clock says the day
   */
  public SheetPage(
      Templates templates, Sites sites, Evidence evidence, Edition edition, Clock clock) {
    this.templates = templates;
    this.sites = sites;
    this.evidence = evidence;
    this.edition = edition;
    this.clock = clock;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.SHEET, this::show);
    routes.get(PagePaths.SHEET_PDF, this::pdf);
    routes.get(PagePaths.SHEET_WORD, this::word);
  }

  private void show(Context context) {
    Address address = new Address(context.queryParamMap());
    OptionQuestion question = OptionAddress.question(address);
    if (Sheet.methods(question).size() > Sheet.MOST) {
      templates.show(context, "sheet/SheetPage", choose(address, question));
      return;
    }
    templates.show(
        context,
        "sheet/SheetPage",
        new SheetView.Shown(
            sites.of("Sheet for patient and team", Place.COMPARE, address),
            document(context, address),
            ways(address)));
  }

  private static SheetView.Ways ways(Address address) {
    return new SheetView.Ways(
        address.at(PagePaths.SHEET_PDF),
        address.with(PAPER, LETTER).at(PagePaths.SHEET_PDF),
        address.at(PagePaths.SHEET_WORD),
        address.without(List.of(MADE)).at(PagePaths.COMPARE));
  }

  private SheetView choose(Address address, OptionQuestion question) {
    List<SheetView.Kept> kept = new ArrayList<>();
    address
        .without(List.of("method"))
        .parameters()
        .forEach((name, values) -> values.forEach(one -> kept.add(new SheetView.Kept(name, one))));
    return new SheetView.Choose(
        sites.of("Which methods stand on the sheet?", Place.COMPARE, address),
        Method.vocabulary().all().stream()
            .filter(method -> !Sheet.isAmputation(method))
            .map(
                method ->
                    new SheetView.Choice(
                        method, question.situation().among().methods().contains(method.code())))
            .toList(),
        Sheet.MOST - 1,
        kept,
        address.at(PagePaths.COMPARE));
  }

  private void pdf(Context context) {
    Address address = new Address(context.queryParamMap());
    SheetPaper paper =
        SheetPaper.on(
            address.has(PAPER, LETTER) ? SheetPaper.Size.LETTER : SheetPaper.Size.A4,
            document(context, address.without(List.of(PAPER))),
            sites.of("Sheet", Place.COMPARE).assets().sheetStyle());
    Attachment.send(
        context,
        "application/pdf",
        "sheet.pdf",
        SheetPdf.of(templates.bytes("sheet/SheetPaper", paper)));
  }

  private void word(Context context) {
    Address address = new Address(context.queryParamMap());
    Attachment.send(
        context,
        "application/vnd.openxmlformats-officedocument.wordprocessingml.document",
        "sheet.docx",
        SheetWord.of(document(context, address)));
  }

  private SheetDocument document(Context context, Address address) {
    OptionQuestion question = Sheet.asking(OptionAddress.question(address));
    if (Sheet.methods(question).size() > Sheet.MOST) {
      Problems problems = new Problems();
      problems.add(
          "method",
          "too-many-methods",
          "a sheet has room for five methods beside amputation; name them by 'method'");
      throw new WrongInputException(problems.list());
    }
    Sheet sheet = Sheet.of(evidence.options().table(question));
    OptionalLong made = made(address);
    String here =
        address
            .without(List.of(MADE))
            .with(MADE, Long.toString(evidence.change()))
            .at(PagePaths.SHEET);
    return new SheetDocument(
        sheet,
        new Prepared(
            edition,
            context.scheme() + "://" + context.host() + here,
            LocalDate.now(clock),
            evidence.hasInvented()),
        made,
        since(sheet, question, made));
  }

  private Optional<Since> since(Sheet now, OptionQuestion question, OptionalLong made) {
    if (made.isEmpty() || made.getAsLong() >= evidence.change()) {
      return Optional.empty();
    }
    Evidence earlier = evidence.earlier(made.getAsLong());
    Sheet then = Sheet.of(earlier.options().table(question));
    return Optional.of(Since.between(then, now, evidence.studies(), made.getAsLong()));
  }

  private static OptionalLong made(Address address) {
    String text = address.first(MADE);
    if (text.isEmpty()) {
      return OptionalLong.empty();
    }
    if (!text.matches("\\d{1,18}")) {
      Problems problems = new Problems();
      problems.add(
          MADE, "not-a-change", "'" + text + "' is no number of a change; expected one such as 12");
      throw new WrongInputException(problems.list());
    }
    return OptionalLong.of(Long.parseLong(text));
  }
}
