package gapwise.server.page.figure;

import static gapwise.sentence.Sentences.say;

import gapwise.desk.Drafts;
import gapwise.desk.KeptDraft;
import gapwise.paper.Picture;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.server.account.Right;
import gapwise.server.address.PagePaths;
import gapwise.server.home.Pictures;
import gapwise.server.job.PostedForm;
import gapwise.server.page.desk.DraftPage;
import gapwise.server.page.paper.PaperPages;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;

/** Pictures of figures that are handed in by themselves: kept, sent, and removed. */
public final class PicturePages {
  private static final String PICTURE = PagePaths.DESK + "/{draft}/figure/picture";

  private final Drafts drafts;
  private final Pictures pictures;

  public PicturePages(Drafts drafts, Pictures pictures) {
    this.drafts = drafts;
    this.pictures = pictures;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.PICTURES + "/{picture}.png", Right.SEE, this::send);
    routes.post(PICTURE, Right.EXTRACT, this::keep);
    routes.post(PICTURE + "/remove", Right.EXTRACT, this::remove);
  }

  private void send(Context context) {
    Picture picture =
        pictures
            .open(context.pathParam("picture"))
            .orElseThrow(() -> new NotFoundResponse(say("figure.picture-not-kept")));
    context
        .contentType("image/png")
        .header("Cache-Control", "private, max-age=86400, immutable")
        .result(picture.png());
  }

  private void keep(Context context) throws IOException {
    KeptDraft kept = DraftPage.draft(drafts, context);
    List<UploadedFile> files = new PostedForm(context).files("picture");
    if (files.size() != 1) {
      Problems problems = new Problems();
      problems.add("picture", "one-picture", say("figure.one-picture"));
      throw new WrongInputException(problems.list());
    }
    try (InputStream content = files.get(0).content()) {
      Pictures.Kept picture = pictures.keep(content);
      if (picture instanceof Pictures.Kept.Not not) {
        throw PaperPages.unread(not.refused());
      }
      context.redirect(
          PagePaths.DESK + "/" + kept.id() + "/figure?image=" + ((Pictures.Kept.As) picture).id(),
          HttpStatus.SEE_OTHER);
    }
  }

  private void remove(Context context) {
    KeptDraft kept = DraftPage.draft(drafts, context);
    if (!pictures.remove(new PostedForm(context).first("image"))) {
      throw new NotFoundResponse(say("figure.picture-not-kept"));
    }
    context.redirect(PagePaths.DESK + "/" + kept.id(), HttpStatus.SEE_OTHER);
  }
}
