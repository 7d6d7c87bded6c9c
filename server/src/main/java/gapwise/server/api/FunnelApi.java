package gapwise.server.api;

import gapwise.analysis.result.Result;
import gapwise.answer.Answer;
import gapwise.answer.AnswerFunnel;
import gapwise.answer.Answers;
import gapwise.answer.Edition;
import gapwise.answer.Large;
import gapwise.figure.funnel.Funnel;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.download.FigureDownloads;
import gapwise.server.route.Routes;
import io.javalin.http.Context;

/** Small against large series as files, under the parameters of the page. */
final class FunnelApi {
  private final Answers answers;
  private final Edition edition;

  FunnelApi(Answers answers, Edition edition) {
    this.answers = answers;
    this.edition = edition;
  }

  void addTo(Routes routes) {
    FigureDownloads.add(routes, Api.ROOT + "/funnel", this::funnel);
    routes.get(Api.ROOT + "/funnel-plan.json", Right.SEE, this::plan);
    routes.get(Api.ROOT + "/funnel-result.json", Right.SEE, this::result);
    routes.get(Api.ROOT + "/funnel-methods.txt", Right.SEE, this::methods);
  }

  private Answer answer(Context context) {
    return answers.funnel(FigureApi.question(new Address(context.queryParamMap())));
  }

  private Large<Funnel> funnel(Context context) {
    Answer answer = answer(context);
    Result result = answer.result().orElseThrow(FigureApi::nothing);
    return AnswerFunnel.large(answer, result, edition).orElseThrow(FigureApi::nothing);
  }

  private void plan(Context context) {
    AnswerFiles.plan(context, "funnel-plan.json", answer(context));
  }

  private void result(Context context) {
    AnswerFiles.result(context, "funnel-result.json", answer(context), edition);
  }

  private void methods(Context context) {
    AnswerFiles.methods(context, "funnel-methods.txt", answer(context), edition);
  }
}
