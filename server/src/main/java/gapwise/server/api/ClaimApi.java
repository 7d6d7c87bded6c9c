package gapwise.server.api;

import gapwise.claim.Claim;
import gapwise.claim.Verdict;
import gapwise.claim.Verdict.Examined;
import gapwise.claim.Verdict.Refused;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.server.address.Address;
import gapwise.server.address.ClaimAddress;
import gapwise.server.home.RememberedClaims;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.ArrayList;
import java.util.List;

/** What may honestly be said of a claim, under the parameters of its page. */
final class ClaimApi {
  private final RememberedClaims claims;

  ClaimApi(RememberedClaims claims) {
    this.claims = claims;
  }

  void addTo(Routes routes) {
    routes.get(Api.ROOT + "/claim", this::answer);
  }

  private void answer(Context context) {
    Address address = new Address(context.queryParamMap());
    Claim claim =
        ClaimAddress.claim(address)
            .orElseThrow(
                () ->
                    new WrongInputException(
                        List.of(
                            new Problem(
                                "",
                                "missing-field",
                                "A claim sets a method against another in an outcome; give"
                                    + " all three, such as a=bone-transport, b=induced-membrane"
                                    + " and outcome=union."))));
    Verdict verdict = claims.verdict(claim);
    if (verdict instanceof Refused refused) {
      refuse(context, refused);
      return;
    }
    Examined examined = (Examined) verdict;
    Json.answer(
        context,
        ClaimJson.of(
            examined,
            claims.settle(examined, ClaimAddress.difference(address)),
            claims.ways(claim)));
  }

  /** The reason, then each thing that could be asked instead, as a parameter of the address. */
  private static void refuse(Context context, Refused refused) {
    List<Problem> problems = new ArrayList<>();
    problems.add(new Problem("", refused.code(), refused.reason()));
    for (Verdict.Offer offer : refused.offers()) {
      problems.add(
          new Problem(
              offer.name(),
              "could-be-asked-instead",
              offer.words() + ": " + offer.name() + "=" + offer.value()));
    }
    ProblemDetails.answer(context, HttpStatus.UNPROCESSABLE_CONTENT, refused.reason(), problems);
  }
}
