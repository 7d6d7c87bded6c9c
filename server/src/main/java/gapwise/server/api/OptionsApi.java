package gapwise.server.api;

import gapwise.decision.option.OptionQuestion;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.OptionAddress;
import gapwise.server.home.Pieces;
import gapwise.server.home.RememberedOptions;
import gapwise.server.route.Routes;
import io.javalin.http.Context;

/** Methods side by side for a situation, under the parameters of the page. */
final class OptionsApi {
  private final RememberedOptions options;

  OptionsApi(RememberedOptions options) {
    this.options = options;
  }

  void addTo(Routes routes) {
    routes.get(Api.ROOT + "/options", Right.SEE, this::answer);
  }

  private void answer(Context context) {
    OptionQuestion question = OptionAddress.question(new Address(context.queryParamMap()));
    Pieces.ofCompared(options, question).all();
    Json.answer(context, OptionsJson.of(options.table(question), options.compared(question)));
  }
}
