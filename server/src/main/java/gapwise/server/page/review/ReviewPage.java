package gapwise.server.page.review;

import static gapwise.sentence.Sentences.say;

import gapwise.desk.KeptDraft;
import gapwise.review.Duty;
import gapwise.review.Progress;
import gapwise.review.Review;
import gapwise.review.ReviewStage;
import gapwise.review.ReviewVersion;
import gapwise.review.StageCount;
import gapwise.screening.Board;
import gapwise.screening.Reader;
import gapwise.screening.Stage;
import gapwise.server.account.Actor;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import gapwise.server.home.Home;
import gapwise.server.home.ReviewWork;
import gapwise.server.home.Screening;
import gapwise.server.page.Place;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.page.extraction.ExtractionAddress;
import gapwise.server.page.part.By;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The review on one page: what it asks, its versions, who does what, and how far it has come. */
public final class ReviewPage {
  private final Templates templates;
  private final Sites sites;
  private final Home home;
  private final ReviewWork work;

  /**
   * @param work how far the work has come in the state that is shown
   */
  public ReviewPage(Templates templates, Sites sites, Home home, ReviewWork work) {
    this.templates = templates;
    this.sites = sites;
    this.home = home;
    this.work = work;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.REVIEW, Right.SEE, this::show);
    new ReviewEditPage(templates, sites, home.review(), work).addTo(routes);
  }

  private void show(Context context) {
    Optional<Reader> who =
        By.person(new Address(context.queryParamMap()).first("who"))
            .or(() -> Actor.now().name().flatMap(Reader::of));
    templates.show(context, "review/ReviewPage", view(who));
  }

  private ReviewView view(Optional<Reader> who) {
    List<ReviewVersion> history = home.review().history();
    Optional<ReviewVersion> latest = home.review().latest();
    Review review = latest.map(ReviewVersion::review).orElse(Review.EMPTY);
    Screening.Shown shown = home.screening().shown();
    Progress progress = Progress.of(review, shown.board(), work.extraction());
    String title = review.title().isEmpty() ? say("review.title") : review.title();
    return new ReviewView(
        sites.of(title, Place.REVIEW),
        latest.isPresent(),
        title,
        review.population(),
        ReviewWords.facts(review),
        home.screening().base().protocol().reasons(),
        ReviewVersion.steps(history).stream().map(ReviewWords::step).toList(),
        progress.lines().stream().map(ReviewPage::line).toList(),
        counts(progress::total),
        ReviewWords.flow(home.screeningFlow().flow(shown)),
        who.map(one -> waiting(one, progress, shown.board())));
  }

  private static ReviewView.Line line(Progress.Line line) {
    String name = line.person().who().name();
    return new ReviewView.Line(
        name,
        line.person().duties().stream().map(Duty::label).collect(Collectors.joining(", ")),
        new Address(Map.of()).with("who", name).at(PagePaths.REVIEW) + "#waiting",
        counts(line::at));
  }

  private static List<ReviewView.Count> counts(Function<ReviewStage, StageCount> of) {
    return Arrays.stream(ReviewStage.values())
        .map(stage -> new ReviewView.Count(stage.label(), of.apply(stage)))
        .toList();
  }

  private ReviewView.Waiting waiting(Reader who, Progress progress, Board board) {
    Optional<Progress.Line> own =
        progress.lines().stream()
            .filter(line -> line.person().who().key().equals(who.key()))
            .findFirst();
    List<ReviewView.Way> ways = new ArrayList<>();
    for (Stage stage : Stage.values()) {
      ReviewStage at = stage == Stage.TITLE ? ReviewStage.TITLE : ReviewStage.FULL_TEXT;
      int open = own.map(line -> line.at(at).waiting()).orElse(board.next(stage, who).size());
      if (open > 0) {
        ways.add(
            new ReviewView.Way(
                say("review.to-read", Map.of("papers", open, "stage", stage.label())),
                address(stage, who).at(PagePaths.SCREENING_READ)));
      }
      boolean settles =
          own.filter(line -> line.person().duties().contains(Duty.SETTLES)).isPresent();
      int apart = board.apart(stage).size();
      if (settles && apart > 0) {
        ways.add(
            new ReviewView.Way(
                say("review.to-settle", Map.of("papers", apart, "stage", stage.label())),
                address(stage, who).at(PagePaths.SCREENING_APART)));
      }
    }
    for (KeptDraft draft : home.drafts().all()) {
      if (Reader.of(draft.who()).filter(one -> one.key().equals(who.key())).isPresent()) {
        ways.add(
            new ReviewView.Way(
                say("review.to-extract", Map.of("study", draft.draft().study())), way(draft)));
      }
    }
    return new ReviewView.Waiting(who.name(), ways);
  }

  /** The address of a form of one of two people is shown on no page; that of its paper is. */
  private static String way(KeptDraft draft) {
    return draft.draft().reader().isPresent()
        ? ExtractionAddress.of(draft.draft().study())
        : PagePaths.DESK + "/" + draft.id();
  }

  private static Address address(Stage stage, Reader who) {
    return new Address(Map.of()).with("who", who.name()).with("stage", stage.code());
  }
}
