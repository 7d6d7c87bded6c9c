package gapwise.server.page.option;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.Edition;
import gapwise.decision.findings.Findings;
import gapwise.decision.option.OptionQuestion;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.OptionAddress;
import gapwise.server.address.PagePaths;
import gapwise.server.download.Attachment;
import gapwise.server.home.Evidence;
import gapwise.server.home.Pieces;
import gapwise.server.page.part.TakeFigure;
import gapwise.server.report.FindingsCsv;
import gapwise.server.report.FindingsDocument;
import gapwise.server.report.FindingsWord;
import gapwise.server.report.Prepared;
import gapwise.server.report.SituationWords;
import gapwise.server.route.Routes;
import gapwise.server.supplement.SupplementDownloads;
import io.javalin.http.Context;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** The table of options as a summary of findings, under the parameters of its page. */
public final class FindingsFiles {
  private final Evidence evidence;
  private final Edition edition;
  private final Clock clock;

  /**
   * @param evidence the state of the evidence base
   * @param edition the same in words
   * @param clock says the day
   */
  public FindingsFiles(Evidence evidence, Edition edition, Clock clock) {
    this.evidence = evidence;
    this.edition = edition;
    this.clock = clock;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(
        PagePaths.COMPARE_FINDINGS_CSV,
        Right.SEE,
        context ->
            Attachment.send(
                context,
                "text/csv; charset=utf-8",
                "summary-of-findings.csv",
                FindingsCsv.of(document(context))));
    routes.get(
        PagePaths.COMPARE_FINDINGS_WORD,
        Right.SEE,
        context ->
            Attachment.send(
                context,
                "application/vnd.openxmlformats-officedocument.wordprocessingml.document",
                "summary-of-findings.docx",
                FindingsWord.of(document(context))));
  }

  /** Where the files of a table are. */
  static List<TakeFigure.Link> ways(Address address) {
    return List.of(
        new TakeFigure.Link(say("page.findings-csv"), address.at(PagePaths.COMPARE_FINDINGS_CSV)),
        new TakeFigure.Link(say("page.findings-word"), address.at(PagePaths.COMPARE_FINDINGS_WORD)),
        new TakeFigure.Link(say("page.whole-supplement"), address.at(SupplementDownloads.COMPARE)));
  }

  private FindingsDocument document(Context context) {
    Address address = new Address(context.queryParamMap());
    OptionQuestion question = OptionAddress.question(address);
    Pieces.ofCompared(evidence.options(), question).all();
    return new FindingsDocument(
        Findings.of(
            evidence.options().table(question), evidence.options().compared(question).within()),
        SituationWords.title(question.situation()),
        new Prepared(
            edition,
            context.scheme() + "://" + context.host() + address.at(PagePaths.COMPARE),
            LocalDate.now(clock),
            Optional.empty(),
            evidence.hasInvented()));
  }
}
