package gapwise.server.api;

import gapwise.answer.Edition;
import gapwise.claim.Claim;
import gapwise.claim.ClaimForest;
import gapwise.claim.Verdict;
import gapwise.claim.Verdict.Examined;
import gapwise.claim.Verdict.Refused;
import gapwise.figure.Figure;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.ClaimAddress;
import gapwise.server.download.FigureDownloads;
import gapwise.server.home.RememberedClaims;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What may honestly be said of a claim, under the parameters of its page. */
final class ClaimApi {
  private final RememberedClaims claims;
  private final Edition edition;

  ClaimApi(RememberedClaims claims, Edition edition) {
    this.claims = claims;
    this.edition = edition;
  }

  void addTo(Routes routes) {
    routes.get(ClaimAddress.FOR_PROGRAMS, Right.SEE, this::answer);
    FigureDownloads.add(routes, ClaimAddress.FIGURE, this::figure);
  }

  private Figure figure(Context context) {
    Verdict verdict = claims.verdict(claim(new Address(context.queryParamMap())));
    return Optional.of(verdict)
        .filter(Examined.class::isInstance)
        .flatMap(examined -> ClaimForest.of((Examined) examined, edition))
        .orElseThrow(
            () ->
                new WrongInputException(
                    List.of(
                        new Problem(
                            "",
                            "nothing-selected",
                            "No study here holds both methods with a number to draw."))));
  }

  private static Claim claim(Address address) {
    return ClaimAddress.claim(address)
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
  }

  private void answer(Context context) {
    Address address = new Address(context.queryParamMap());
    Verdict verdict = claims.verdict(claim(address));
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
            claims.ways(examined.claim())));
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
