package gapwise.paper.table;

import gapwise.budget.Work;
import gapwise.paper.Box;
import gapwise.paper.Page;
import gapwise.paper.TurnedView;
import gapwise.paper.Word;
import gapwise.paper.Word.Turn;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Finds and reads tables. */
public final class Tables {
  /** So many words that run the same other way are a table printed sideways, or nothing is. */
  private static final int SIDEWAYS_WORDS = 24;

  /** What stands below so many points from the foot of a page ends it: foot lines alone follow. */
  private static final double FOOT_SHARE = 0.12;

  private Tables() {}

  /**
   * Reads the table that a person drew a box around.
   *
   * @return empty if no word stands in the box
   */
  public static Optional<Grid> in(Page page, Box box) {
    Work.check();
    Turn turn = turnIn(page, box);
    if (turn == Turn.NONE) {
      return new GridReading(page, box).read();
    }
    TurnedView view = TurnedView.of(page, turn);
    TurnedView whole = view;
    Box inView = TurnedBoxes.seen(view, box);
    return new GridReading(view.page(), inView).read().map(g -> TurnedBoxes.back(g, whole));
  }

  private static Turn turnIn(Page page, Box box) {
    Turn most = Turn.NONE;
    long count = -1;
    for (Turn turn : Turn.values()) {
      long here =
          page.words().stream().filter(w -> w.turn() == turn && box.holdsMiddleOf(w.box())).count();
      if (here > count) {
        count = here;
        most = turn;
      }
    }
    return most;
  }

  /** Proposes the tables of a page, from top to bottom. */
  public static List<Grid> on(Page page) {
    return across(List.of(page));
  }

  /**
   * Proposes the tables of pages that follow one another; one that goes on over a page is one.
   *
   * @param pages in their order; pages that could not be read may be missing
   */
  public static List<Grid> across(List<Page> pages) {
    List<Grid> grids = new ArrayList<>();
    List<Open> open = new ArrayList<>();
    for (Page page : pages) {
      Work.check();
      for (Piece piece : pieces(page)) {
        open.removeIf(o -> o.page() < page.number() - 1);
        Optional<Grid> joined = Optional.empty();
        Optional<Open> begun = Optional.empty();
        for (int i = open.size() - 1; i >= 0 && joined.isEmpty(); i--) {
          joined = Continuation.of(open.get(i), piece);
          begun = Optional.of(open.get(i));
        }
        if (joined.isPresent()) {
          grids.set(begun.orElseThrow().at(), joined.get());
        } else if (piece.sure()) {
          grids.add(piece.grid());
        } else {
          continue;
        }
        Grid last = joined.isPresent() ? joined.get() : piece.grid();
        int at = joined.isPresent() ? begun.orElseThrow().at() : grids.size() - 1;
        Cuts cuts = joined.isPresent() ? begun.orElseThrow().cuts() : piece.reading().cuts();
        Box box = piece.grid().parts().get(0).box();
        open.removeIf(o -> o.at() == at);
        open.add(new Open(last, cuts, page.number(), box, at, piece.endsPage()));
      }
    }
    return List.copyOf(grids);
  }

  /**
   * A table that may go on over the page or column.
   *
   * @param at which of all tables it is
   * @param ends whether nothing but foot lines stands below it
   */
  record Open(Grid grid, Cuts cuts, int page, Box box, int at, boolean ends) {}

  /** A table of one page, before it is known whether it goes on from another. */
  record Piece(
      Page page,
      Grid grid,
      GridReading reading,
      Optional<Caption> caption,
      boolean beginsPage,
      boolean endsPage,
      boolean sure) {}

  private static List<Piece> pieces(Page page) {
    List<Piece> pieces =
        new ArrayList<>(
            upright(page, page.words().stream().filter(w -> w.turn() == Turn.NONE).toList()));
    for (Turn turn : List.of(Turn.UP, Turn.DOWN, Turn.OVER)) {
      if (page.words().stream().filter(w -> w.turn() == turn).count() >= SIDEWAYS_WORDS) {
        TurnedView view = TurnedView.of(page, turn);
        for (Piece piece : upright(view.page(), view.page().words())) {
          pieces.add(
              new Piece(
                  page,
                  TurnedBoxes.back(piece.grid(), view),
                  piece.reading(),
                  piece.caption(),
                  piece.beginsPage(),
                  piece.endsPage(),
                  piece.sure()));
        }
      }
    }
    return pieces;
  }

  private static List<Piece> upright(Page page, List<Word> words) {
    List<Piece> pieces = new ArrayList<>();
    for (Regions.Region region : new Regions(page).find()) {
      GridReading reading = new GridReading(page, region.box());
      Optional<Grid> read = reading.read();
      if (read.isPresent() && (read.get().columns() > 1)) {
        Box box = region.box();
        double foot = page.height() * (1 - FOOT_SHARE);
        boolean ends =
            words.stream()
                .noneMatch(
                    w ->
                        w.box().top() > box.bottom()
                            && w.box().bottom() < foot
                            && w.box().sharedWidth(box) > 0);
        boolean begins =
            words.stream()
                .noneMatch(
                    w ->
                        w.box().bottom() < box.top()
                            && w.box().top() > page.height() * FOOT_SHARE / 1.5
                            && w.box().sharedWidth(box) > 0);
        Grid grid = read.get().withCaption(region.caption().map(Caption::words).orElse(""));
        pieces.add(new Piece(page, grid, reading, region.caption(), begins, ends, region.sure()));
      }
    }
    return pieces;
  }
}
