package gapwise.server.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.problem.WrongInputException;
import gapwise.review.Progress;
import gapwise.review.Review;
import gapwise.review.ReviewOutcome;
import gapwise.review.ReviewPerson;
import gapwise.review.ReviewStage;
import gapwise.review.ReviewVersion;
import gapwise.review.StageCount;
import gapwise.review.kept.KeptQuestion;
import gapwise.review.kept.KeptVersion;
import gapwise.server.account.Right;
import gapwise.server.home.Home;
import gapwise.server.home.ReviewWork;
import gapwise.server.kept.KeptAnswers;
import gapwise.server.route.Routes;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** The review with its versions and progress, and the questions that are kept. */
public final class ReviewApi {
  private static final Map<ReviewStage, String> NAMES =
      Map.of(
          ReviewStage.TITLE, "titleAndAbstract",
          ReviewStage.FULL_TEXT, "fullText",
          ReviewStage.SETTLED, "settled",
          ReviewStage.EXTRACTION, "extraction",
          ReviewStage.CHECKED, "checked");

  private final Home home;
  private final ReviewWork work;
  private final KeptAnswers answers;

  /**
   * @param work how far the work has come in the state that is shown
   * @param answers of kept questions in the same state
   */
  public ReviewApi(Home home, ReviewWork work, KeptAnswers answers) {
    this.home = home;
    this.work = work;
    this.answers = answers;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(Api.ROOT + "/review", Right.SEE, context -> Json.answer(context, review()));
    routes.get(Api.ROOT + "/kept", Right.SEE, context -> Json.answer(context, kept()));
  }

  private ObjectNode review() {
    ObjectNode json = Json.object();
    Optional<ReviewVersion> latest = home.review().latest();
    Review review = latest.map(ReviewVersion::review).orElse(Review.EMPTY);
    latest.ifPresent(version -> write(review, json.putObject("review")));
    ArrayNode versions = json.putArray("versions");
    ReviewVersion.steps(home.review().history()).forEach(step -> write(step, versions.addObject()));
    Progress progress = Progress.of(review, home.screening().shown().board(), work.extraction());
    ObjectNode told = json.putObject("progress");
    ArrayNode people = told.putArray("people");
    for (Progress.Line line : progress.lines()) {
      ObjectNode person = people.addObject().put("who", line.person().who().name());
      counts(line::at, person.putObject("stages"));
    }
    counts(progress::total, told.putObject("all"));
    return json;
  }

  private static void write(Review review, ObjectNode json) {
    json.put("title", review.title())
        .put("registration", review.registration())
        .put("population", review.population());
    texts(json.putArray("interventions"), review.interventions());
    texts(json.putArray("comparators"), review.comparators());
    ArrayNode outcomes = json.putArray("outcomes");
    for (ReviewOutcome one : review.outcomes()) {
      ObjectNode outcome = outcomes.addObject().put("code", one.outcome()).put("time", one.time());
      one.matters()
          .ifPresent(
              matters ->
                  outcome.put("matters", matters).put("unit", ReviewOutcome.unit(one.outcome())));
    }
    texts(json.putArray("include"), review.include());
    texts(json.putArray("exclude"), review.exclude());
    ArrayNode designs = json.putArray("designs");
    review.limits().designs().forEach(design -> designs.add(design.code()));
    review.limits().lengthFromCentimetres().ifPresent(cm -> json.put("lengthFromCentimetres", cm));
    review.limits().lengthToCentimetres().ifPresent(cm -> json.put("lengthToCentimetres", cm));
    review.limits().yearFrom().ifPresent(year -> json.put("yearFrom", year));
    review.limits().yearTo().ifPresent(year -> json.put("yearTo", year));
    json.put("languages", review.limits().languages());
    ArrayNode people = json.putArray("people");
    for (ReviewPerson one : review.people()) {
      ObjectNode person = people.addObject().put("who", one.who().name());
      texts(person.putArray("duties"), one.duties().stream().map(duty -> duty.code()).toList());
    }
  }

  private static void texts(ArrayNode list, List<String> texts) {
    texts.forEach(list::add);
  }

  private static void write(ReviewVersion.Step step, ObjectNode json) {
    ReviewVersion version = step.version();
    json.put("version", version.version())
        .put("when", version.when().toString())
        .put("who", version.who())
        .put("why", version.why())
        .put("amendment", step.isAmendment());
    json.putObject("workSoFar")
        .put("choices", version.work().choices())
        .put("drafts", version.work().drafts())
        .put("studies", version.work().studies());
    ArrayNode changes = json.putArray("changes");
    step.changes()
        .forEach(
            change ->
                changes
                    .addObject()
                    .put("field", change.field().label())
                    .put("before", change.before())
                    .put("after", change.after()));
  }

  private static void counts(Function<ReviewStage, StageCount> of, ObjectNode json) {
    for (ReviewStage stage : ReviewStage.values()) {
      StageCount count = of.apply(stage);
      json.putObject(NAMES.getOrDefault(stage, stage.label()))
          .put("done", count.done())
          .put("waiting", count.waiting())
          .put("inConflict", count.apart());
    }
  }

  /** Only what is known without work is marked, so that no request answers for all questions. */
  private ObjectNode kept() {
    ObjectNode json = Json.object();
    ArrayNode all = json.putArray("questions");
    for (KeptVersion version : home.keptQuestions().all()) {
      KeptQuestion question = version.question();
      all.addObject()
          .put("id", question.id())
          .put("title", question.title())
          .put("address", question.address())
          .put("version", version.version())
          .put("when", version.when().toString())
          .put("who", version.who())
          .put("change", question.digest().state().change())
          .put("mark", mark(question));
    }
    return json;
  }

  private String mark(KeptQuestion question) {
    try {
      return answers.isKnown(question) ? answers.moved(question).mark().code() : "not-worked-out";
    } catch (WrongInputException wrong) {
      return "no-answer";
    }
  }
}
