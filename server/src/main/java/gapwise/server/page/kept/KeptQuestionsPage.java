package gapwise.server.page.kept;

import static gapwise.sentence.Sentences.say;

import gapwise.curation.KeptQuestionBase;
import gapwise.curation.StudiesAt;
import gapwise.review.kept.KeptQuestion;
import gapwise.review.kept.KeptVersion;
import gapwise.review.kept.Moved;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import gapwise.server.job.PostedForm;
import gapwise.server.kept.KeptAnswers;
import gapwise.server.kept.KeptPlace;
import gapwise.server.page.Keeping;
import gapwise.server.page.Place;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.page.part.By;
import gapwise.server.page.part.Fetching;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * Questions that a team keeps: kept from a page, listed with a mark where studies under them
 * changed or numbers moved, and their new answer taken. What is not worked out yet in this state of
 * the evidence is fetched line by line.
 */
public final class KeptQuestionsPage {
  private static final String ONE = PagePaths.KEPT + "/{id}";
  private static final int DIGITS = 12;

  private final Templates templates;
  private final Sites sites;
  private final KeptQuestionBase base;
  private final KeptAnswers answers;
  private final StudiesAt studies;

  /**
   * @param answers the answers in the state that is shown
   * @param studies the studies of the same state
   */
  public KeptQuestionsPage(
      Templates templates,
      Sites sites,
      KeptQuestionBase base,
      KeptAnswers answers,
      StudiesAt studies) {
    this.templates = templates;
    this.sites = sites;
    this.base = base;
    this.answers = answers;
    this.studies = studies;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.KEPT, Right.SEE, this::show);
    routes.post(PagePaths.KEPT, Right.EXTRACT, this::keep);
    routes.get(ONE, Right.SEE, this::one);
    routes.get(ONE + "/line", Right.SEE, context -> part(context, "kept/KeptStanding", "/line"));
    routes.get(ONE + "/moved", Right.SEE, this::moved);
    routes.get(ONE + "/mark", Right.SEE, this::mark);
    routes.post(ONE + "/take", Right.EXTRACT, this::take);
    routes.post(ONE + "/drop", Right.EXTRACT, this::drop);
  }

  private KeptLines lines() {
    return new KeptLines(answers);
  }

  private void show(Context context) {
    Address address = new Address(context.queryParamMap());
    Fetching.Way way = Fetching.Way.of(address);
    List<KeptView.Line> all =
        base.all().stream().map(version -> lines().line(version, way, "/line")).toList();
    boolean working = all.stream().anyMatch(line -> line.standing() instanceof KeptView.Working);
    templates.show(
        context,
        "kept/KeptQuestionsPage",
        new KeptView(
            sites.of(say("kept.title"), Place.KEPT),
            all,
            working ? Optional.of(PagePaths.KEPT + "?whole=yes") : Optional.empty(),
            Keeping.apart(address)));
  }

  private KeptVersion version(Context context) {
    String id = context.pathParam("id");
    return Optional.of(id)
        .filter(KeptQuestion::isId)
        .flatMap(base::find)
        .orElseThrow(() -> new NotFoundResponse(say("kept.none")));
  }

  private void part(Context context, String template, String path) {
    templates.show(context, template, lines().line(version(context), Fetching.Way.PART, path));
  }

  private void one(Context context) {
    templates.show(
        context,
        "kept/KeptQuestionPage",
        view(context, Fetching.Way.of(new Address(context.queryParamMap()))));
  }

  private void moved(Context context) {
    templates.show(context, "kept/KeptMoved", view(context, Fetching.Way.PART));
  }

  private KeptView.One view(Context context, Fetching.Way way) {
    KeptVersion version = version(context);
    KeptView.Line line = lines().line(version, way, "/moved");
    return new KeptView.One(
        sites.of(version.question().title(), Place.KEPT),
        line,
        version.version(),
        line.standing() instanceof KeptView.Known
            ? Optional.of(MovedView.of(answers.moved(version.question()), studies))
            : Optional.empty(),
        steps(base.history(version.question().id())));
  }

  private static List<KeptView.Step> steps(List<KeptVersion> versions) {
    List<KeptView.Step> steps = new ArrayList<>();
    for (int i = 0; i < versions.size(); i++) {
      KeptVersion version = versions.get(i);
      String words =
          i == 0
              ? ""
              : KeptLines.words(
                  Moved.between(
                      versions.get(i - 1).question().digest(), version.question().digest()));
      steps.add(
          0,
          new KeptView.Step(
              say("kept.version", Map.of("version", Integer.toString(version.version()))),
              KeptLines.taken(version),
              words));
    }
    return steps;
  }

  /** Says nothing on a page that asks something else by now. */
  private void mark(Context context) {
    KeptVersion version = version(context);
    boolean same =
        new Address(context.queryParamMap()).first("at").equals(asked(version.question()));
    if (same) {
      templates.show(
          context,
          "kept/KeptMark",
          new KeptView.Opened(version, lines().line(version, Fetching.Way.PART, "/mark")));
    } else {
      context.contentType("text/html; charset=utf-8").result("");
    }
  }

  private static String asked(KeptQuestion question) {
    return question.page() + "?" + question.query();
  }

  private void keep(Context context) {
    PostedForm form = new PostedForm(context);
    By by = By.read(form, say("kept.first-why"));
    KeptPlace place =
        KeptPlace.find(form.first("page"))
            .orElseThrow(() -> By.wrong("page", "not-to-be-kept", say("kept.not-here")));
    Address question = KeptPlace.question(read(form.first("query")));
    if (!place.asks(question)) {
      throw By.wrong("query", "not-to-be-kept", say("kept.not-asked"));
    }
    String written = question.at("");
    String query = written.isEmpty() ? "" : written.substring(1);
    if (query.length() > KeptQuestion.LONGEST_QUERY) {
      throw By.wrong("query", "too-long", say("kept.too-long"));
    }
    String title = form.first("title");
    if (title.isBlank() || title.length() > KeptQuestion.LONGEST_TITLE) {
      throw By.wrong(
          "title",
          "missing-value",
          say("kept.no-title", Map.of("most", KeptQuestion.LONGEST_TITLE)));
    }
    if (base.all().size() >= KeptQuestionBase.MOST) {
      throw By.wrong(
          "title", "too-many", say("kept.too-many", Map.of("most", KeptQuestionBase.MOST)));
    }
    KeptAnswers.Asked asked = new KeptAnswers.Asked(place, question);
    answers.pieces(asked).all();
    String id = UUID.randomUUID().toString().replace("-", "").substring(0, DIGITS);
    written(
        base.keep(
            new KeptQuestion(id, title, place.path(), query, answers.digest(asked)),
            by.who().name(),
            by.why(),
            0));
    context.redirect(PagePaths.KEPT, HttpStatus.SEE_OTHER);
  }

  private static Address read(String query) {
    try {
      return Address.parse(query);
    } catch (IllegalArgumentException unreadable) {
      throw By.wrong("query", "not-to-be-kept", say("kept.not-here"));
    }
  }

  private void take(Context context) {
    PostedForm form = new PostedForm(context);
    By by = By.read(form);
    KeptQuestion question = version(context).question();
    KeptAnswers.Asked asked = KeptAnswers.Asked.of(question);
    answers.pieces(asked).all();
    written(base.keep(question.with(answers.digest(asked)), by.who().name(), by.why(), seen(form)));
    context.redirect(PagePaths.KEPT + "/" + question.id(), HttpStatus.SEE_OTHER);
  }

  private void drop(Context context) {
    PostedForm form = new PostedForm(context);
    By by = By.read(form);
    String id = version(context).question().id();
    written(base.drop(id, by.who().name(), by.why(), seen(form)));
    context.redirect(PagePaths.KEPT, HttpStatus.SEE_OTHER);
  }

  private static int seen(PostedForm form) {
    String seen = form.first("seen");
    return seen.matches("\\d{1,9}") ? Integer.parseInt(seen) : 0;
  }

  private static void written(boolean kept) {
    if (!kept) {
      throw By.wrong("seen", "changed-meanwhile", say("kept.meanwhile"));
    }
  }
}
