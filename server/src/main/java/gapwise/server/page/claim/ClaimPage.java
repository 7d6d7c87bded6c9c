package gapwise.server.page.claim;

import gapwise.answer.Edition;
import gapwise.claim.Claim;
import gapwise.claim.ClaimForest;
import gapwise.claim.Settling;
import gapwise.claim.Verdict;
import gapwise.claim.Verdict.Examined;
import gapwise.claim.Verdict.Refused;
import gapwise.curation.ReviewBase;
import gapwise.problem.WrongInputException;
import gapwise.search.SearchAnswer;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import gapwise.selection.Question;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.ClaimAddress;
import gapwise.server.address.Filters;
import gapwise.server.address.PagePaths;
import gapwise.server.home.Pieces;
import gapwise.server.home.RememberedClaims;
import gapwise.server.page.Place;
import gapwise.server.page.Site;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.page.part.Awaited;
import gapwise.server.page.part.Fetching;
import gapwise.server.page.part.FilterForm;
import gapwise.server.page.part.TakeFigure;
import gapwise.server.page.part.ThresholdOffer;
import gapwise.server.page.part.TwoWidths;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** A claim put together from its parts, and what may honestly be said of it. */
public final class ClaimPage {
  static final String WAYS = PagePaths.CLAIM + "/ways";

  private final Templates templates;
  private final Sites sites;
  private final StudySearch search;
  private final RememberedClaims claims;
  private final Edition edition;
  private final ReviewBase review;

  public ClaimPage(
      Templates templates,
      Sites sites,
      StudySearch search,
      RememberedClaims claims,
      Edition edition,
      ReviewBase review) {
    this.templates = templates;
    this.sites = sites;
    this.search = search;
    this.claims = claims;
    this.edition = edition;
    this.review = review;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.CLAIM, Right.SEE, this::show);
    routes.get(PagePaths.CLAIM_RESULT, Right.SEE, this::part);
    routes.get(WAYS, Right.SEE, this::showWays);
  }

  private void show(Context context) {
    Address address = new Address(context.queryParamMap());
    templates.show(
        context, "claim/ClaimPage", view(Fetching.plain(address), Fetching.Way.of(address)));
  }

  private void part(Context context) {
    Address address = new Address(context.queryParamMap());
    templates.show(context, "claim/ClaimShown", view(Fetching.plain(address), Fetching.Way.PART));
  }

  private void showWays(Context context) {
    Claim claim =
        ClaimAddress.claim(new Address(context.queryParamMap()))
            .filter(asked -> claims.examined(asked).isPresent())
            .orElseThrow(() -> new NotFoundResponse("There is no such claim to analyse."));
    templates.show(context, "claim/ClaimWays", claims.ways(claim));
  }

  /**
   * @throws WrongInputException with everything that is wrong in the address
   */
  private ClaimView view(Address address, Fetching.Way way) {
    Optional<Claim> claim = ClaimAddress.claim(address);
    SearchRequest request = Filters.read(address.without(List.of("method")));
    SearchAnswer found =
        search.search(request.withOutcomes(Set.of()), StudySearch.Order.YEAR_DESCENDING, 0, 0);
    FilterForm form = FilterForm.of(PagePaths.CLAIM, address, request, found);
    return claim
        .<ClaimView>map(said -> said(form, said, way))
        .orElseGet(
            () -> new ClaimView.Unsaid(sites.of("Check a claim", Place.CLAIM, address), form));
  }

  private ClaimView said(FilterForm form, Claim claim, Fetching.Way way) {
    Address address = form.address();
    Site site = sites.of(claim.words(), Place.CLAIM, address).keeping(PagePaths.CLAIM, address);
    return Awaited.of(
            Question.about(claim.outcome(), claim.among()),
            search,
            new Pieces().and(() -> claims.has(claim), () -> claims.verdict(claim)),
            way,
            Fetching.of(address, PagePaths.CLAIM_RESULT, PagePaths.CLAIM))
        .<ClaimView>map(awaited -> new ClaimView.Working(site, form, claim, awaited))
        .orElseGet(() -> judged(site, form, claim));
  }

  private ClaimView judged(Site site, FilterForm form, Claim claim) {
    Address address = form.address();
    Verdict verdict = claims.verdict(claim);
    if (verdict instanceof Refused refused) {
      return new ClaimView.Refused(site, form, claim, refused, links(address, refused.offers()));
    }
    Examined examined = (Examined) verdict;
    Settling settling = claims.settle(examined, ClaimAddress.difference(address));
    return new ClaimView.Examined(
        site,
        form,
        claim,
        examined,
        drawn(address, examined),
        settling,
        address.first("ways").isEmpty() ? Optional.empty() : Optional.of(claims.ways(claim)),
        links(address, examined.offers()),
        // A review names months or operations, where this page asks for percent of a mean.
        settling.ofHundred()
            ? ThresholdOffer.of(
                review, Map.of(claim.outcome().code(), "differ"), address, PagePaths.CLAIM)
            : Optional.empty());
  }

  private static List<ClaimView.Link> links(Address address, List<Verdict.Offer> offers) {
    return offers.stream()
        .map(
            offer ->
                new ClaimView.Link(
                    offer.words(),
                    address
                        .without(List.of("outcome-b", "clock-b"))
                        .with(offer.name(), offer.value())
                        .at(PagePaths.CLAIM)))
        .toList();
  }

  private Optional<ClaimView.Drawn> drawn(Address address, Examined examined) {
    return ClaimForest.of(examined, edition)
        .map(
            figure ->
                new ClaimView.Drawn(
                    TwoWidths.of(figure.drawn()),
                    figure.some(),
                    TakeFigure.of(
                        ClaimAddress.FIGURE, address.without(List.of("ways", "differ")), figure)));
  }
}
