package gapwise.server.api;

import gapwise.answer.Answers;
import gapwise.answer.Edition;
import gapwise.answer.Large;
import gapwise.answer.LengthAnswer;
import gapwise.figure.bubble.Bubble;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.LengthAddress;
import gapwise.server.download.FigureDownloads;
import gapwise.server.route.Routes;
import io.javalin.http.Context;

/** An outcome over the length of missing bone as files, under the parameters of its page. */
final class BySizeApi {
  private final Answers answers;
  private final Edition edition;

  BySizeApi(Answers answers, Edition edition) {
    this.answers = answers;
    this.edition = edition;
  }

  void addTo(Routes routes) {
    FigureDownloads.add(routes, Api.ROOT + "/by-size", this::bubble);
    routes.get(Api.ROOT + "/by-size-plan.json", Right.SEE, this::plan);
    routes.get(Api.ROOT + "/by-size-result.json", Right.SEE, this::result);
    routes.get(Api.ROOT + "/by-size-methods.txt", Right.SEE, this::methods);
  }

  private void plan(Context context) {
    AnswerFiles.plan(context, "by-size-plan.json", asked(context).answer());
  }

  private void result(Context context) {
    AnswerFiles.result(context, "by-size-result.json", asked(context).answer(), edition);
  }

  private void methods(Context context) {
    AnswerFiles.methods(context, "by-size-methods.txt", asked(context).answer(), edition);
  }

  private Large<Bubble> bubble(Context context) {
    return asked(context).large(edition).orElseThrow(FigureApi::nothing);
  }

  private LengthAnswer asked(Context context) {
    Address address = new Address(context.queryParamMap());
    return answers.byLength(FigureApi.question(address), LengthAddress.shape(address));
  }
}
