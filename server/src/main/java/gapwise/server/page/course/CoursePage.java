package gapwise.server.page.course;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.Answers;
import gapwise.answer.Edition;
import gapwise.answer.QuestionWords;
import gapwise.course.CourseAnswer;
import gapwise.course.CourseFigure;
import gapwise.course.Courses;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.search.SearchAnswer;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import gapwise.selection.Question;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.CourseAddress;
import gapwise.server.address.Filters;
import gapwise.server.address.PagePaths;
import gapwise.server.address.QuestionAddress;
import gapwise.server.home.Pieces;
import gapwise.server.page.Place;
import gapwise.server.page.Site;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.page.part.Awaited;
import gapwise.server.page.part.Fetching;
import gapwise.server.page.part.FilterForm;
import gapwise.server.page.part.TakeFigure;
import gapwise.server.page.part.TwoWidths;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** A time to an event over time: curves pooled by method, shares by month, what was left out. */
public final class CoursePage {
  private final Templates templates;
  private final Sites sites;
  private final StudySearch search;
  private final Answers answers;
  private final Courses courses;
  private final Edition edition;

  /**
   * @param answers selects the numbers that papers print
   * @param courses answers by curves
   */
  public CoursePage(
      Templates templates,
      Sites sites,
      StudySearch search,
      Answers answers,
      Courses courses,
      Edition edition) {
    this.templates = templates;
    this.sites = sites;
    this.search = search;
    this.answers = answers;
    this.courses = courses;
    this.edition = edition;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.OVER_TIME, Right.SEE, this::show);
    routes.get(PagePaths.OVER_TIME_RESULT, Right.SEE, this::part);
  }

  private void show(Context context) {
    Address address = new Address(context.queryParamMap());
    templates.show(
        context, "course/CoursePage", view(Fetching.plain(address), Fetching.Way.of(address)));
  }

  private void part(Context context) {
    Address address = new Address(context.queryParamMap());
    templates.show(context, "course/CourseShown", view(Fetching.plain(address), Fetching.Way.PART));
  }

  private CourseView view(Address address, Fetching.Way way) {
    SearchRequest request = Filters.read(address);
    SearchAnswer found =
        search.search(request.withOutcomes(Set.of()), StudySearch.Order.YEAR_DESCENDING, 0, 0);
    FilterForm form = FilterForm.of(PagePaths.OVER_TIME, address, request, found);
    int horizon = CourseAddress.horizon(address);
    Optional<Question> question = QuestionAddress.question(address);
    if (question.isEmpty() || !Courses.isTime(question.get().outcome())) {
      return new CourseView.Unasked(
          sites.of("Over time", Place.OVER_TIME, address),
          form,
          question.map(Question::outcome).map(CoursePage::noTime));
    }
    return asked(form, question.get(), horizon, way);
  }

  private static String noTime(Outcome outcome) {
    return say("page.no-time", Map.of("outcome", outcome.label()));
  }

  private CourseView asked(FilterForm form, Question question, int horizon, Fetching.Way way) {
    String words = QuestionWords.of(question);
    Site site =
        sites
            .of(say("course.title", Map.of("question", words)), Place.OVER_TIME, form.address())
            .keeping(PagePaths.OVER_TIME, form.address());
    Pieces pieces =
        Pieces.ofAnswer(
            answers,
            question,
            () -> courses.has(question, horizon),
            () -> courses.ask(question, horizon));
    return Awaited.of(
            question,
            search,
            pieces,
            way,
            Fetching.of(form.address(), PagePaths.OVER_TIME_RESULT, PagePaths.OVER_TIME))
        .<CourseView>map(awaited -> new CourseView.Working(site, form, words, awaited))
        .orElseGet(() -> shown(site, form, words, courses.ask(question, horizon)));
  }

  private CourseView.Asked shown(Site site, FilterForm form, String words, CourseAnswer answer) {
    return new CourseView.Asked(
        site,
        form,
        words,
        answer,
        CourseFigure.of(answer, edition)
            .map(
                figure ->
                    new CourseView.Drawn(
                        figure,
                        TwoWidths.of(figure),
                        TakeFigure.of("/api/v1/over-time", form.address(), figure))),
        CourseLines.of(answer, form.address()),
        CourseLines.leftOut(answer));
  }
}
