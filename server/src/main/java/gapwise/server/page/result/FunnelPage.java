package gapwise.server.page.result;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.PlanOutcome.Wrong;
import gapwise.answer.Answer;
import gapwise.answer.AnswerFunnel;
import gapwise.answer.Answers;
import gapwise.answer.Edition;
import gapwise.answer.Large;
import gapwise.answer.QuestionWords;
import gapwise.figure.funnel.Funnel;
import gapwise.figure.funnel.FunnelTable;
import gapwise.problem.Problem;
import gapwise.search.StudySearch;
import gapwise.selection.HowRead;
import gapwise.selection.Question;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import gapwise.server.address.QuestionAddress;
import gapwise.server.home.Pieces;
import gapwise.server.page.Place;
import gapwise.server.page.Site;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.page.part.Awaited;
import gapwise.server.page.part.Fetching;
import gapwise.server.page.part.ReadStands;
import gapwise.server.page.part.TakeFigure;
import gapwise.server.page.part.TwoWidths;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Whether small series of a question tell another story than large ones. */
public final class FunnelPage {

  private final Templates templates;
  private final Sites sites;
  private final StudySearch search;
  private final Answers answers;
  private final Edition edition;

  public FunnelPage(
      Templates templates, Sites sites, StudySearch search, Answers answers, Edition edition) {
    this.templates = templates;
    this.sites = sites;
    this.search = search;
    this.answers = answers;
    this.edition = edition;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.FUNNEL, Right.SEE, this::show);
    routes.get(PagePaths.FUNNEL_RESULT, Right.SEE, this::part);
  }

  private void show(Context context) {
    Address address = new Address(context.queryParamMap());
    show(context, "result/FunnelPage", Fetching.plain(address), Fetching.Way.of(address));
  }

  private void part(Context context) {
    Address address = new Address(context.queryParamMap());
    show(context, "result/FunnelShown", Fetching.plain(address), Fetching.Way.PART);
  }

  private void show(Context context, String template, Address address, Fetching.Way way) {
    Optional<Question> question = QuestionAddress.question(address);
    if (question.isEmpty()) {
      context.redirect(address.at(PagePaths.POOLED), HttpStatus.SEE_OTHER);
      return;
    }
    templates.show(context, template, view(address, question.get(), way));
  }

  private FunnelView view(Address address, Question question, Fetching.Way way) {
    String words = QuestionWords.of(question);
    Site site =
        sites.of(say("page.small-against-large", Map.of("question", words)), Place.FUNNEL, address);
    Pieces pieces =
        Pieces.ofAnswer(
            answers, question, () -> answers.hasFunnel(question), () -> answers.funnel(question));
    return Awaited.of(
            question,
            search,
            pieces,
            way,
            Fetching.of(address, PagePaths.FUNNEL_RESULT, PagePaths.FUNNEL))
        .<FunnelView>map(awaited -> new FunnelView.Working(site, words, address, awaited))
        .orElseGet(() -> shown(site, words, address, answers.funnel(question)));
  }

  private FunnelView.Shown shown(Site site, String words, Address address, Answer answer) {
    return new FunnelView.Shown(
        site,
        words,
        answer
            .result()
            .flatMap(result -> AnswerFunnel.large(answer, result, edition))
            .<FunnelView.Finding>map(funnel -> drawn(address, funnel))
            .orElseGet(() -> new FunnelView.NothingToDraw(problems(answer))),
        ReadStands.of(PagePaths.FUNNEL, address, HowRead.ofRows(answer.selection().rows())),
        answer.plan().map(ObjectNode::toPrettyString),
        address);
  }

  private static FunnelView.Drawn drawn(Address address, Large<Funnel> figure) {
    Funnel funnel = figure.drawn();
    return new FunnelView.Drawn(
        funnel,
        TwoWidths.of(funnel),
        FunnelTable.of(funnel).lines(),
        TakeFigure.of("/api/v1/funnel", address, figure));
  }

  private static List<String> problems(Answer answer) {
    return answer
        .outcome()
        .filter(Wrong.class::isInstance)
        .map(wrong -> ((Wrong) wrong).problems().stream().map(Problem::line).toList())
        .orElse(List.of());
  }
}
