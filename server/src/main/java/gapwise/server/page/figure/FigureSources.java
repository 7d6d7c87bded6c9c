package gapwise.server.page.figure;

import static gapwise.sentence.Sentences.say;

import gapwise.desk.Draft;
import gapwise.desk.FigureMarks;
import gapwise.desk.FigurePoints;
import gapwise.evidence.Reading;
import gapwise.paper.Box;
import gapwise.paper.DrawnPath.Point;
import gapwise.paper.Opened;
import gapwise.paper.Opening;
import gapwise.paper.Page;
import gapwise.paper.PagePicture;
import gapwise.paper.PageReading;
import gapwise.paper.Paper;
import gapwise.paper.Picture;
import gapwise.paper.Refused;
import gapwise.paper.trace.Figures;
import gapwise.paper.trace.PictureTrace;
import gapwise.server.address.PagePaths;
import gapwise.server.home.Papers;
import gapwise.server.home.Pictures;
import gapwise.server.page.paper.PaperPages;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** Opens the pages and pictures that figures are read off. */
final class FigureSources {
  /** Lines of half a point are two pixels broad at this, which following them needs. */
  private static final int DOTS_PER_INCH = 200;

  /** How far a followed line may be from its pixels when points on the way are left out, points. */
  private static final double THINNED = 0.35;

  private static final Pattern PAGE = Pattern.compile("[1-9]\\d{0,3}");

  private final Papers papers;
  private final Pictures pictures;

  FigureSources(Papers papers, Pictures pictures) {
    this.papers = papers;
    this.pictures = pictures;
  }

  /** The picture that the fields name. */
  FigureSource open(Draft draft, FigureFields fields) {
    if (!fields.text("image").isEmpty()) {
      return image(fields.text("image"));
    }
    if (!PAGE.matcher(fields.text("page")).matches()) {
      throw new NotFoundResponse(say("figure.no-source"));
    }
    int number = Integer.parseInt(fields.text("page"));
    String paper = fields.text("paper").isEmpty() ? draft.paper().orElse("") : fields.text("paper");
    PageReading reading = paper(draft, paper).page(number);
    if (reading instanceof Refused refused) {
      throw PaperPages.unread(refused);
    }
    Page page = (Page) reading;
    return new FigureSource(
        new FigureMarks.Source(false, paper, number),
        page.box(),
        PagePaths.PAPERS + "/" + paper + "/pages/" + number + ".png?sharp=yes",
        Figures.on(page));
  }

  private Paper paper(Draft draft, String paper) {
    boolean ofDraft =
        draft.paper().filter(paper::equals).isPresent()
            || draft.rows().stream()
                .flatMap(row -> row.readings().values().stream())
                .map(Reading::paper)
                .anyMatch(paper::equals);
    if (!ofDraft) {
      throw new NotFoundResponse(say("figure.other-paper"));
    }
    Opening opening =
        papers.open(paper).orElseThrow(() -> new NotFoundResponse(say("paper.not-kept")));
    if (opening instanceof Refused refused) {
      throw PaperPages.unread(refused);
    }
    return ((Opened) opening).paper();
  }

  private FigureSource image(String id) {
    Picture picture = picture(id);
    return new FigureSource(
        new FigureMarks.Source(true, id, 1),
        new Box(0, 0, picture.shownWidth(), picture.shownHeight()),
        PagePaths.PICTURES + "/" + id + ".png",
        List.of());
  }

  private Picture picture(String id) {
    return pictures
        .open(id)
        .orElseThrow(() -> new NotFoundResponse(say("figure.picture-not-kept")));
  }

  /** The points of the line that a person points at; empty where none is near. */
  List<Point> follow(Draft draft, FigureSource source, Box plot, Point at) {
    PagePicture picture =
        source.source().image()
            ? picture(source.source().file())
            : paper(draft, source.source().file()).picture(source.source().page(), DOTS_PER_INCH);
    if (picture instanceof Refused refused) {
      throw PaperPages.unread(refused);
    }
    try {
      return FigurePoints.thinned(PictureTrace.follow((Picture) picture, plot, at), THINNED);
    } catch (IOException unread) {
      throw new UncheckedIOException("a picture that was kept cannot be read", unread);
    }
  }

  /** A place as a field holds it, left and top between a blank; empty for anything else. */
  static Optional<Point> place(String text) {
    String[] parts = text.strip().split("\\s+");
    if (parts.length != 2) {
      return Optional.empty();
    }
    var left = TypedNumbers.number(parts[0]);
    var top = TypedNumbers.number(parts[1]);
    return left.isPresent() && top.isPresent()
        ? Optional.of(new Point(left.getAsDouble(), top.getAsDouble()))
        : Optional.empty();
  }
}
