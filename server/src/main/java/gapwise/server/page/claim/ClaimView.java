package gapwise.server.page.claim;

import gapwise.answer.AnswerForest;
import gapwise.claim.Claim;
import gapwise.claim.Settling;
import gapwise.claim.Verdict;
import gapwise.claim.Ways;
import gapwise.evidence.vocabulary.Method;
import gapwise.selection.HowRead;
import gapwise.server.address.Address;
import gapwise.server.address.ClaimAddress;
import gapwise.server.address.PagePaths;
import gapwise.server.address.QuestionAddress;
import gapwise.server.page.Site;
import gapwise.server.page.part.Awaited;
import gapwise.server.page.part.FilterForm;
import gapwise.server.page.part.QuestionParts;
import gapwise.server.page.part.ReadStands;
import gapwise.server.page.part.TakeFigure;
import gapwise.server.page.part.ThresholdOffer;
import gapwise.server.page.part.TwoWidths;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What the page of a claim shows: a claim examined or refused, or the choice of its parts. */
public sealed interface ClaimView {
  /** Letters of a plan that a page has room for: those of some hundred series. */
  int LONGEST_PLAN = 50_000;

  /** The frame of the page. */
  Site site();

  /** Filters and outcomes to choose from. */
  FilterForm form();

  /** All methods to choose from. */
  default List<Method> methods() {
    return Method.vocabulary().all();
  }

  /** What narrows the claim, each with the claim without it; its own parts are not among them. */
  default List<FilterForm.On> on() {
    Address address = form().address();
    List<FilterForm.On> on = new ArrayList<>();
    form().on().stream()
        .filter(one -> one.rest().all("outcome").equals(address.all("outcome")))
        .forEach(on::add);
    on.addAll(QuestionParts.besideFilters(PagePaths.CLAIM, address));
    return on;
  }

  /** A part of the claim has still to be chosen. */
  record Unsaid(Site site, FilterForm form) implements ClaimView {}

  /**
   * A claim put together of which it is not known yet what may be said.
   *
   * @param awaited what is worked out
   */
  record Working(Site site, FilterForm form, Claim claim, Awaited awaited) implements ClaimView {}

  /** A claim put together. */
  sealed interface Said extends ClaimView {
    /** The claim. */
    Claim claim();

    /** What could be asked instead. */
    List<Link> offers();

    /** The filters and the outcome, without the methods and what else is the claim's own. */
    default Address ofOutcome() {
      Address address = form().address();
      return address
          .without(ClaimAddress.OWN)
          .without(List.of("method", "outcome", "least"))
          .with("outcome", address.first("outcome"));
    }
  }

  /** A claim that cannot be examined, and why. */
  record Refused(Site site, FilterForm form, Claim claim, Verdict.Refused why, List<Link> offers)
      implements Said {
    /** Address of the gaps among these patients. */
    public String gaps() {
      return ofOutcome().at(PagePaths.MAP);
    }
  }

  /**
   * A claim that was examined.
   *
   * @param told what may be said of it
   * @param figure the direct comparisons drawn; empty where there are none
   * @param settling what study would settle it
   * @param ways the claim under many analyses; empty where they are still to be worked out
   * @param threshold the difference that matters by the review; empty where it names none of it
   */
  record Examined(
      Site site,
      FilterForm form,
      Claim claim,
      Verdict.Examined told,
      Optional<Drawn> figure,
      Settling settling,
      Optional<Ways> ways,
      List<Link> offers,
      Optional<ThresholdOffer> threshold)
      implements Said {

    /** How the studies behind it were read. */
    public ReadStands stands() {
      return ReadStands.of(
          PagePaths.CLAIM,
          form.address().without(List.of("ways")),
          HowRead.ofRows(told.rows().selection().rows()));
    }

    /** Address of the claim with all its plans, for programs. */
    public String forPrograms() {
      return form.address().without(List.of("ways")).at(ClaimAddress.FOR_PROGRAMS);
    }

    /** Address of the many analyses alone. */
    public String waysHref() {
      return form.address().at(ClaimPage.WAYS);
    }

    /** Address of this page with the many analyses in it. */
    public String withWays() {
      return form.address().with("ways", "all").at(PagePaths.CLAIM) + "#ways";
    }

    /** Address of both methods pooled side by side, with their drawing. */
    public String pooled() {
      Address methods = ofBoth();
      for (String kept :
          List.of("clock", QuestionAddress.UNSTATED_CLOCK, QuestionAddress.DEFINITION, "least")) {
        methods = methods.with(kept, form.address().first(kept));
      }
      return methods.at(PagePaths.POOLED);
    }

    /** Address of the series behind the claim. */
    public String studies() {
      return ofBoth().at(PagePaths.STUDIES);
    }

    private Address ofBoth() {
      return ofOutcome()
          .with("method", form.address().first("a"))
          .and("method", form.address().first("b"));
    }

    /** What stands beside the page. */
    public List<String> cautions() {
      return AnswerForest.CAUTIONS;
    }
  }

  /** The figure, and its files. */
  record Drawn(TwoWidths drawing, Optional<String> some, TakeFigure take) {}

  /** A link to take instead. */
  record Link(String words, String href) {}
}
