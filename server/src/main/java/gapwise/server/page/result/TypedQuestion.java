package gapwise.server.page.result;

import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.CarriedQuestion;
import gapwise.server.address.PagePaths;
import gapwise.server.address.TypedWords;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;

/**
 * Leads from a question typed in plain words to its answer: where the words name an outcome, to
 * that outcome pooled; else to the methods side by side.
 */
public final class TypedQuestion {
  /** Adds its route. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.ASK, Right.SEE, TypedQuestion::lead);
  }

  private static void lead(Context context) {
    Address typed = new Address(context.queryParamMap());
    Address words = TypedWords.understood(typed).without(List.of(TypedWords.ASIDE));
    context.redirect(
        words.all("outcome").isEmpty()
            ? new CarriedQuestion(TypedWords.understoodOfPatient(typed)).atCompare()
            : words.at(PagePaths.POOLED),
        HttpStatus.SEE_OTHER);
  }
}
