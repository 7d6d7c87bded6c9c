package gapwise.server.page.place;

import gapwise.answer.Answers;
import gapwise.answer.Edition;
import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.Method;
import gapwise.figure.timeline.Timeline;
import gapwise.place.CaseSketch;
import gapwise.place.CaseTimeline;
import gapwise.place.PatientCase;
import gapwise.place.PlacedCase;
import gapwise.place.PlacedCases;
import gapwise.place.UsualCourse;
import gapwise.place.UsualCourses;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.CaseAddress;
import gapwise.server.address.PagePaths;
import gapwise.server.page.Place;
import gapwise.server.page.Site;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.page.part.Awaited;
import gapwise.server.page.part.Fetching;
import gapwise.server.page.part.TakeFigure;
import gapwise.server.page.part.TwoWidths;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/** One case held against published evidence; the case stands in the address and nowhere else. */
public final class CasePage {
  /** The course drawn from what is entered so far. */
  static final String COURSE = PagePaths.CASE + "/course";

  private final Templates templates;
  private final Sites sites;
  private final PlacedCases cases;
  private final StudySearch search;
  private final UsualCourses usual;
  private final Edition edition;

  public CasePage(
      Templates templates,
      Sites sites,
      Answers answers,
      StudySearch search,
      Function<String, Optional<Study>> studies,
      Edition edition) {
    this.templates = templates;
    this.sites = sites;
    this.cases = new PlacedCases(answers);
    this.search = search;
    this.usual = new UsualCourses(answers, search, studies);
    this.edition = edition;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.CASE, Right.SEE, this::show);
    routes.get(COURSE, Right.SEE, this::showCourse);
    routes.get(PagePaths.CASE_RESULT, Right.SEE, this::part);
  }

  private void show(Context context) {
    Address asked = new Address(context.queryParamMap());
    Address address = Fetching.plain(asked);
    Optional<Address> changed = new CourseRows(address, usual(address)).changed();
    if (changed.isPresent()) {
      context.redirect(
          changed.get().at(PagePaths.CASE) + "#" + CourseRows.field(address), HttpStatus.SEE_OTHER);
      return;
    }
    show(context, "place/CasePage", view(address, Fetching.Way.of(asked)));
  }

  private void part(Context context) {
    Address address = Fetching.plain(new Address(context.queryParamMap()));
    show(context, "place/CaseShown", view(address, Fetching.Way.PART));
  }

  private void show(Context context, String template, CaseView view) {
    if (view instanceof CaseView.Wrong) {
      context.status(HttpStatus.UNPROCESSABLE_CONTENT);
    }
    templates.show(context, template, view);
  }

  private void showCourse(Context context) {
    templates.show(
        context, "place/CaseCourse", entered(new Address(context.queryParamMap()), edition));
  }

  private CaseView view(Address address, Fetching.Way way) {
    Entered entered = entered(address, edition);
    if (!entered.problems().isEmpty()) {
      return new CaseView.Wrong(site(address), form(address, entered.problems()), entered);
    }
    return entered
        .patientCase()
        .map(patientCase -> told(address, patientCase, entered, way))
        .orElseGet(() -> new CaseView.Empty(site(address), form(address, List.of()), entered));
  }

  private static Entered entered(Address address, Edition edition) {
    try {
      return CaseAddress.read(address)
          .map(patientCase -> drawn(address, patientCase, edition))
          .orElse(Entered.NOTHING);
    } catch (WrongInputException wrong) {
      return Entered.wrong(wrong.problems());
    }
  }

  private static Entered drawn(Address address, PatientCase patientCase, Edition edition) {
    return new Entered(
        Optional.of(patientCase),
        CaseSketch.of(patientCase, edition).map(Entered.Drawing::of),
        CourseLines.of(patientCase.course()),
        CourseRows.leftOut(address),
        List.of());
  }

  private CaseForm form(Address address, List<Problem> problems) {
    return new CaseForm(address, usual(address), problems);
  }

  /** What is usual of the method entered; the first question asks for it and needs none of it. */
  private UsualCourse usual(Address address) {
    return address.parameters().isEmpty()
        ? UsualCourse.NONE
        : usual.of(Method.vocabulary().find(address.first("method")));
  }

  private CaseView told(
      Address address, PatientCase patientCase, Entered entered, Fetching.Way way) {
    Fetching fetching = Fetching.of(address, PagePaths.CASE_RESULT, PagePaths.CASE);
    return Awaited.ofCase(groups(patientCase), way, fetching)
        .<CaseView>map(
            awaited ->
                new CaseView.Working(site(address), form(address, List.of()), entered, awaited))
        .orElseGet(() -> placed(address, patientCase, entered));
  }

  /** Groups that report what the case has reached. */
  private int groups(PatientCase patientCase) {
    Set<String> outcomes =
        patientCase.reached().stream()
            .map(reached -> reached.milestone().outcome().code())
            .collect(Collectors.toSet());
    return outcomes.isEmpty() ? 0 : search.count(SearchRequest.EVERYTHING.withOutcomes(outcomes));
  }

  private CaseView.Placed placed(Address address, PatientCase patientCase, Entered entered) {
    PlacedCase placed = cases.place(patientCase);
    return new CaseView.Placed(
        site(address),
        form(address, List.of()),
        entered,
        placed,
        CaseTimeline.of(placed, edition).map(timeline -> drawn(timeline, address)));
  }

  private Site site(Address address) {
    return sites.of("Place a case", Place.CASE, address);
  }

  private static CaseView.Drawn drawn(Timeline timeline, Address address) {
    return new CaseView.Drawn(
        timeline,
        TwoWidths.of(timeline),
        TakeFigure.of("/api/v1/case", CourseRows.alone(address), timeline));
  }
}
