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
import gapwise.selection.HowRead;
import gapwise.selection.Question;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import gapwise.server.address.QuestionAddress;
import gapwise.server.page.Place;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
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
  private final Answers answers;
  private final Edition edition;

  public FunnelPage(Templates templates, Sites sites, Answers answers, Edition edition) {
    this.templates = templates;
    this.sites = sites;
    this.answers = answers;
    this.edition = edition;
  }

  /** Adds its route. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.FUNNEL, Right.SEE, this::show);
  }

  private void show(Context context) {
    Address address = new Address(context.queryParamMap());
    Optional<Question> question = QuestionAddress.question(address);
    if (question.isEmpty()) {
      context.redirect(address.at(PagePaths.POOLED), HttpStatus.SEE_OTHER);
      return;
    }
    templates.show(context, "result/FunnelPage", view(address, answers.funnel(question.get())));
  }

  private FunnelView view(Address address, Answer answer) {
    String words = QuestionWords.of(answer.question());
    return new FunnelView(
        sites.of(say("page.small-against-large", Map.of("question", words)), Place.FUNNEL, address),
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
