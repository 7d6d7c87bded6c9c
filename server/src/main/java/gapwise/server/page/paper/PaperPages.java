package gapwise.server.page.paper;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.PageBox;
import gapwise.evidence.Reading;
import gapwise.paper.Box;
import gapwise.paper.Opened;
import gapwise.paper.Opening;
import gapwise.paper.Page;
import gapwise.paper.PagePicture;
import gapwise.paper.PageReading;
import gapwise.paper.Paper;
import gapwise.paper.Picture;
import gapwise.paper.Refused;
import gapwise.paper.Word;
import gapwise.paper.table.Grid;
import gapwise.paper.table.Tables;
import gapwise.server.account.Right;
import gapwise.server.address.PageBoxes;
import gapwise.server.address.PagePaths;
import gapwise.server.home.Papers;
import gapwise.server.home.Pictures;
import gapwise.server.page.Place;
import gapwise.server.page.Site;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Pages of papers: as a picture, as a part of another page, and by themselves with a place marked.
 */
public final class PaperPages {
  private static final String PAGE = PagePaths.PAPERS + "/{paper}/pages/{page}";

  /** Letters of 8 points are read well at this. */
  private static final int DOTS_PER_INCH = 120;

  /** Where a picture is enlarged, a line of half a point should still be broader than a pixel. */
  private static final int SHARP_DOTS_PER_INCH = 240;

  private static final Pattern NUMBER = Pattern.compile("\\d{1,4}");

  private static final Pattern DRAFT = Pattern.compile("[0-9a-f]{12}|[0-9a-f]{32}");

  private final Templates templates;
  private final Sites sites;
  private final Papers papers;
  private final Pictures pictures;

  public PaperPages(Templates templates, Sites sites, Papers papers, Pictures pictures) {
    this.templates = templates;
    this.sites = sites;
    this.papers = papers;
    this.pictures = pictures;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(PAGE + ".png", Right.SEE, this::picture);
    routes.get(PAGE + "/part", Right.SEE, context -> show(context, Optional.empty()));
    routes.get(
        PAGE,
        Right.SEE,
        context -> show(context, Optional.of(sites.of(say("paper.title"), Place.DESK))));
  }

  /** The paper that an address names. */
  private Paper paper(Context context) {
    Opening opening =
        papers
            .open(context.pathParam("paper"))
            .orElseThrow(() -> new NotFoundResponse(say("paper.not-kept")));
    if (opening instanceof Refused refused) {
      throw unread(refused);
    }
    return ((Opened) opening).paper();
  }

  /** A file that cannot be read is no fault of the server's. */
  public static HttpResponseException unread(Refused refused) {
    return switch (refused.reason()) {
      case NO_SUCH_PAGE, MISSING -> new NotFoundResponse(refused.sentence());
      case BUSY ->
          new HttpResponseException(HttpStatus.TOO_MANY_REQUESTS.getCode(), refused.sentence());
      default ->
          new HttpResponseException(HttpStatus.UNPROCESSABLE_CONTENT.getCode(), refused.sentence());
    };
  }

  private static int number(Context context) {
    String number = context.pathParam("page");
    if (!NUMBER.matcher(number).matches()) {
      throw new NotFoundResponse(say("paper.no-page", Map.of("page", number)));
    }
    return Integer.parseInt(number);
  }

  private void picture(Context context) {
    boolean sharp = "yes".equals(context.queryParam("sharp"));
    PagePicture picture =
        paper(context).picture(number(context), sharp ? SHARP_DOTS_PER_INCH : DOTS_PER_INCH);
    if (picture instanceof Refused refused) {
      throw unread(refused);
    }
    context
        .contentType("image/png")
        .header("Cache-Control", "private, max-age=86400, immutable")
        .result(((Picture) picture).png());
  }

  private void show(Context context, Optional<Site> site) {
    Optional<Picture> alone = pictures.open(context.pathParam("paper"));
    if (alone.isPresent() && number(context) == 1) {
      show(context, site, alone.get());
      return;
    }
    Paper paper = paper(context);
    PageReading reading = paper.page(number(context));
    if (reading instanceof Refused refused) {
      throw unread(refused);
    }
    Page page = (Page) reading;
    templates.show(
        context,
        site.isPresent() ? "paper/PaperPage" : "paper/PagePart",
        new PageView(
            site,
            context.pathParam("paper"),
            page.number(),
            paper.pages(),
            new PageView.Size(page.width(), page.height()),
            page.words().stream().map(PaperPages::placed).toList(),
            marked(context.queryParams("at")),
            site.isPresent() ? List.of() : tables(context, page),
            draft(context).map(draft -> figure(draft, page.number())),
            context.path().replaceFirst("/part$", "") + ".png",
            page.notes()));
  }

  private static String figure(String draft, int page) {
    return PagePaths.DESK + "/" + draft + "/figure?page=" + page;
  }

  /** A picture that was handed in by itself, as a paper of one page without words. */
  private void show(Context context, Optional<Site> site, Picture picture) {
    String name = context.pathParam("paper");
    templates.show(
        context,
        site.isPresent() ? "paper/PaperPage" : "paper/PagePart",
        new PageView(
            site,
            name,
            1,
            1,
            new PageView.Size(picture.shownWidth(), picture.shownHeight()),
            List.of(),
            marked(context.queryParams("at")),
            List.of(),
            Optional.empty(),
            PagePaths.PICTURES + "/" + name + ".png",
            List.of()));
  }

  private static Optional<String> draft(Context context) {
    return Optional.ofNullable(context.queryParam("draft")).filter(DRAFT.asMatchPredicate());
  }

  /** The tables that seem to stand on the page, each to be taken into the draft beside it. */
  private static List<PageView.Table> tables(Context context, Page page) {
    Optional<String> draft = draft(context);
    if (draft.isEmpty()) {
      return List.of();
    }
    List<PageView.Table> tables = new ArrayList<>();
    for (Grid grid : Tables.on(page)) {
      Box box = grid.parts().get(0).box();
      tables.add(
          new PageView.Table(
              grid.caption().isEmpty() ? say("paper.a-table") : grid.caption(),
              PagePaths.DESK
                  + "/"
                  + draft.get()
                  + "/table?page="
                  + page.number()
                  + "&box="
                  + hundredths(Math.max(0, box.left()))
                  + ","
                  + hundredths(Math.max(0, box.top()))
                  + ","
                  + hundredths(box.right())
                  + ","
                  + hundredths(box.bottom())));
    }
    return tables;
  }

  private static PageView.Placed placed(Word word) {
    Box box = word.wholeBox();
    return new PageView.Placed(
        word.text(),
        hundredths(box.left()),
        hundredths(box.top()),
        hundredths(Math.max(box.width(), 1)),
        hundredths(Math.max(box.height(), 1)));
  }

  private static double hundredths(double points) {
    return Math.rint(points * 100) / 100;
  }

  /** Boxes in an address; what is none is passed over, for the page is shown all the same. */
  private static List<PageBox> marked(List<String> texts) {
    return texts.stream()
        .limit(Reading.MOST_BOXES)
        .flatMap(text -> PageBoxes.read(text).stream())
        .toList();
  }
}
