package gapwise.server.page.claim;

import gapwise.answer.AnswerForest;
import gapwise.answer.Edition;
import gapwise.answer.PlainForest;
import gapwise.claim.Claim;
import gapwise.claim.Settling;
import gapwise.claim.Verdict;
import gapwise.claim.Verdict.Examined;
import gapwise.claim.Verdict.Refused;
import gapwise.claim.Ways;
import gapwise.evidence.Clock;
import gapwise.evidence.Coded;
import gapwise.evidence.Method;
import gapwise.figure.Forest;
import gapwise.figure.ForestDrawing;
import gapwise.figure.Medium;
import gapwise.problem.WrongInputException;
import gapwise.search.SearchAnswer;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import gapwise.server.address.Address;
import gapwise.server.address.ClaimAddress;
import gapwise.server.address.Filters;
import gapwise.server.address.PagePaths;
import gapwise.server.address.QuestionAddress;
import gapwise.server.home.RememberedClaims;
import gapwise.server.page.Site;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.page.part.Definitions;
import gapwise.server.page.part.FilterForm;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** A claim put together from its parts, and what may honestly be said of it. */
public final class ClaimPage {
  private static final String WAYS = PagePaths.CLAIM + "/ways";

  private final Templates templates;
  private final Sites sites;
  private final StudySearch search;
  private final RememberedClaims claims;
  private final Edition edition;

  public ClaimPage(
      Templates templates,
      Sites sites,
      StudySearch search,
      RememberedClaims claims,
      Edition edition) {
    this.templates = templates;
    this.sites = sites;
    this.search = search;
    this.claims = claims;
    this.edition = edition;
  }

  /** A link to take instead. */
  public record Link(String words, String href) {}

  /** A drawing in its two widths. */
  public record Drawn(String wide, String narrow) {}

  /**
   * What the template shows.
   *
   * @param site the frame of the page
   * @param form filters and outcomes to choose from
   * @param claim the claim; empty where a part has still to be chosen
   * @param verdict what came of it; empty without a claim
   * @param figure the direct comparisons drawn
   * @param settling what study would settle it
   * @param ways the claim under many analyses; empty where they are still to be worked out
   * @param offers what could be asked instead
   */
  public record View(
      Site site,
      FilterForm form,
      Optional<Claim> claim,
      Optional<Verdict> verdict,
      Optional<Drawn> figure,
      Optional<Settling> settling,
      Optional<Ways> ways,
      List<Link> offers) {

    public Optional<Refused> refused() {
      return verdict.filter(Refused.class::isInstance).map(Refused.class::cast);
    }

    public Optional<Examined> examined() {
      return verdict.filter(Examined.class::isInstance).map(Examined.class::cast);
    }

    /** All methods to choose from. */
    public List<Method> methods() {
      return Method.vocabulary().all();
    }

    /** What narrows the claim, each with the claim without it; its own parts are not among them. */
    public List<FilterForm.On> on() {
      List<FilterForm.On> on = new ArrayList<>();
      form.on().stream()
          .filter(one -> one.rest().all("outcome").equals(form.address().all("outcome")))
          .forEach(on::add);
      Coded.parse(Clock.class, form.address().first("clock"))
          .ifPresent(
              clock ->
                  on.add(
                      new FilterForm.On(
                          "counted from " + clock.label(),
                          PagePaths.CLAIM,
                          form.address().without(List.of("clock", "clock-b")))));
      Definitions.taken(PagePaths.CLAIM, form.address()).ifPresent(on::add);
      return on;
    }

    /** Address of the many analyses alone. */
    public String waysHref() {
      return form.address().at(WAYS);
    }

    /** Address of this page with the many analyses in it. */
    public String withWays() {
      return form.address().with("ways", "all").at(PagePaths.CLAIM) + "#ways";
    }

    /** Address of the gaps among these patients. */
    public String gaps() {
      return filters().with("outcome", form.address().first("outcome")).at(PagePaths.MAP);
    }

    /** Address of both methods pooled side by side, with their drawing. */
    public String pooled() {
      Address methods =
          filters()
              .with("outcome", form.address().first("outcome"))
              .with("method", form.address().first("a"))
              .and("method", form.address().first("b"));
      for (String kept : List.of("clock", QuestionAddress.DEFINITION, "least")) {
        methods = methods.with(kept, form.address().first(kept));
      }
      return methods.at(PagePaths.POOLED);
    }

    /** Address of the series behind the claim. */
    public String studies() {
      return filters()
          .with("outcome", form.address().first("outcome"))
          .with("method", form.address().first("a"))
          .and("method", form.address().first("b"))
          .at(PagePaths.STUDIES);
    }

    private Address filters() {
      return form.address()
          .without(ClaimAddress.OWN)
          .without(List.of("method", "outcome", "least"));
    }

    /** What stands beside the page. */
    public List<String> cautions() {
      return AnswerForest.CAUTIONS;
    }
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.CLAIM, this::show);
    routes.get(WAYS, this::showWays);
  }

  private void show(Context context) {
    templates.show(context, "claim/ClaimPage", view(new Address(context.queryParamMap())));
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
  private View view(Address address) {
    Optional<Claim> claim = ClaimAddress.claim(address);
    SearchRequest request = Filters.read(address.without(List.of("method")));
    SearchAnswer found =
        search.search(request.withOutcomes(Set.of()), StudySearch.Order.YEAR_DESCENDING, 0, 0);
    FilterForm form = FilterForm.of(PagePaths.CLAIM, address, request, found);
    Optional<Verdict> verdict = claim.map(claims::verdict);
    Optional<Examined> examined =
        verdict.filter(Examined.class::isInstance).map(Examined.class::cast);
    return new View(
        sites.of(claim.map(Claim::words).orElse("Check a claim"), Site.Section.CLAIM),
        form,
        claim,
        verdict,
        examined.flatMap(this::drawn),
        examined.map(told -> claims.settle(told, ClaimAddress.difference(address))),
        address.first("ways").isEmpty() || examined.isEmpty()
            ? Optional.empty()
            : claim.map(claims::ways),
        verdict.map(told -> offers(address, told)).orElse(List.of()));
  }

  private static List<Link> offers(Address address, Verdict verdict) {
    List<Verdict.Offer> offers =
        verdict instanceof Refused refused ? refused.offers() : ((Examined) verdict).offers();
    return offers.stream()
        .map(
            offer ->
                new Link(
                    offer.words(),
                    address
                        .without(List.of("outcome-b", "clock-b"))
                        .with(offer.name(), offer.value())
                        .at(PagePaths.CLAIM)))
        .toList();
  }

  private Optional<Drawn> drawn(Examined examined) {
    return examined
        .direct()
        .result()
        .filter(
            result ->
                result.studies().orElse(List.of()).stream()
                    .anyMatch(study -> study.shown().isPresent()))
        .map(
            result -> {
              Forest forest = PlainForest.of(result, edition);
              return new Drawn(
                  ForestDrawing.draw(forest, Medium.PAGE).get(0).inline(),
                  ForestDrawing.draw(forest, Medium.PHONE).get(0).inline());
            });
  }
}
