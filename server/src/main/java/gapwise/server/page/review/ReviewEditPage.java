package gapwise.server.page.review;

import static gapwise.sentence.Sentences.say;

import gapwise.curation.ReviewBase;
import gapwise.review.Review;
import gapwise.review.ReviewVersion;
import gapwise.server.account.Right;
import gapwise.server.address.PagePaths;
import gapwise.server.home.ReviewWork;
import gapwise.server.job.PostedForm;
import gapwise.server.page.Place;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.page.part.By;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Optional;

/** The form of the review; each time it is sent the review gets a version. */
final class ReviewEditPage {
  private final Templates templates;
  private final Sites sites;
  private final ReviewBase base;
  private final ReviewWork work;

  ReviewEditPage(Templates templates, Sites sites, ReviewBase base, ReviewWork work) {
    this.templates = templates;
    this.sites = sites;
    this.base = base;
    this.work = work;
  }

  void addTo(Routes routes) {
    routes.get(PagePaths.REVIEW_EDIT, Right.SETTLE, this::show);
    routes.post(PagePaths.REVIEW, Right.SETTLE, this::keep);
  }

  private void show(Context context) {
    Optional<ReviewVersion> latest = base.latest();
    templates.show(
        context,
        "review/ReviewEditPage",
        new ReviewEditView(
            sites.of(say("review.edit-title"), Place.REVIEW),
            latest.map(ReviewVersion::review).orElse(Review.EMPTY),
            latest.map(ReviewVersion::version).orElse(0),
            work.soFar().hasBegun()));
  }

  private void keep(Context context) {
    PostedForm form = new PostedForm(context);
    Review review = ReviewForm.read(form);
    By by = By.read(form);
    String seen = form.first("seen");
    boolean kept =
        base.keep(
            review,
            work.soFar(),
            by.who().name(),
            by.why(),
            seen.matches("\\d{1,9}") ? Integer.parseInt(seen) : 0);
    if (!kept) {
      throw By.wrong("seen", "changed-meanwhile", say("review.meanwhile"));
    }
    context.redirect(PagePaths.REVIEW, HttpStatus.SEE_OTHER);
  }
}
