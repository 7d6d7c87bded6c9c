package gapwise.figure.forest;

import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Setting;
import gapwise.figure.drawing.Style;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * How a figure is laid out on the sheets of a medium. Where sheets have a height of their own, few
 * rows are set as large as fills one; methods compared share one slide, and where their series do
 * not fit beside them, the pooled values come first and the series on further slides.
 */
final class ForestPages {
  /** How much larger letters are tried on a page that few rows would leave empty. */
  private static final double[] LARGER_ON_PAPER = {1.5, 1.4, 1.3, 1.2, 1.15, 1.1, 1.05, 1};

  private static final double[] LARGER_ON_A_SLIDE = {1.2, 1.1, 1};

  /** Shares of a slide that its plot takes, the first where rows fit. */
  private static final double[] PLOT_ON_A_SLIDE = {
    ForestColumns.PLOT_ON_A_SLIDE, ForestColumns.LEAST_FOR_PLOT_ON_A_SLIDE
  };

  /** More rows than this are not tried on one page of fixed height. */
  private static final int MOST_ON_ONE_PAGE = 60;

  /** Letters are not set larger at the cost of the plot: it keeps this share of the sheet. */
  private static final double LEAST_PLOT = 0.25;

  /** Nor at that of names, which keep room for this many sizes of a letter. */
  private static final double LEAST_NAME = 8.5;

  /** Widths that are worked out from each other may differ by so much. */
  private static final double ROUNDED = 1e-6;

  private final Forest forest;
  private final Setting setting;

  private ForestPages(Forest forest, Setting setting) {
    this.forest = forest;
    this.setting = setting;
  }

  static List<PageOfParts> of(Forest forest, Setting setting) {
    return new ForestPages(forest, setting).pages();
  }

  private List<PageOfParts> pages() {
    Style usual = setting.style(forest.rows().size());
    if (usual.sheet().fixedHeight().isEmpty()) {
      return whole(Board.of(forest, usual));
    }
    boolean slide = usual.sheet().landscape();
    if (forest.rows().size() <= MOST_ON_ONE_PAGE) {
      List<PageOfParts> one =
          slide
              ? onOneSlide(usual)
              : onOne(usual, style -> Board.of(forest, style), LEAST_PLOT, LEAST_NAME);
      if (!one.isEmpty()) {
        return one;
      }
    }
    if (!slide) {
      return whole(Board.of(forest, usual));
    }
    return forest.blocks().size() > 1 ? pooledFirst(usual) : onFewest(usual, this::whole);
  }

  private List<PageOfParts> onOneSlide(Style usual) {
    for (double share : PLOT_ON_A_SLIDE) {
      List<PageOfParts> one =
          onOne(
              usual,
              style -> Board.onSlide(forest, style, share),
              share,
              ForestColumns.LEAST_FOR_NAMES_ON_A_SLIDE);
      if (!one.isEmpty()) {
        return one;
      }
    }
    return List.of();
  }

  /** The one page of the largest letters that leave plot and names their room; empty for none. */
  private List<PageOfParts> onOne(
      Style usual, Function<Style, Board> boards, double plot, double name) {
    for (Style style : largestFirst(usual)) {
      Board board = boards.apply(style);
      boolean roomy =
          board.columns().plotWidth() + ROUNDED >= plot * style.sheet().width()
              && board.columns().labelRoom() >= name * style.type().text();
      if (style.equals(usual) || roomy) {
        List<PageOfParts> pages = whole(board);
        if (pages.size() == 1) {
          return List.of(pages.get(0).spread());
        }
      }
    }
    return List.of();
  }

  /** The widest plot of a slide that takes no more slides than a narrower one. */
  private List<PageOfParts> onFewest(Style style, Function<Board, List<PageOfParts>> laid) {
    List<PageOfParts> fewest = List.of();
    for (double share : PLOT_ON_A_SLIDE) {
      List<PageOfParts> pages = laid.apply(Board.onSlide(forest, style, share));
      if (fewest.isEmpty() || pages.size() < fewest.size()) {
        fewest = pages;
      }
    }
    return fewest;
  }

  private List<Style> largestFirst(Style usual) {
    boolean slide = usual.sheet().landscape();
    Style roomy = slide ? setting.style(0) : usual;
    Stream<Style> larger =
        Stream.of(slide ? LARGER_ON_A_SLIDE : LARGER_ON_PAPER)
            .flatMapToDouble(java.util.Arrays::stream)
            .mapToObj(roomy::largerBy);
    return Stream.concat(larger, Stream.of(roomy, setting.style(Integer.MAX_VALUE)))
        .distinct()
        .toList();
  }

  /** Rows in their order, each block with its summary under it. */
  private List<PageOfParts> whole(Board board) {
    return new Paginator(board, FigureWords.firstHead(board))
        .pages(chunks(board, true), FigureWords.tail(board));
  }

  /** One page of the pooled values, then the series of each block. */
  private List<PageOfParts> pooledFirst(Style usual) {
    First first = first();
    List<PageOfParts> pages = new ArrayList<>(first.pages());
    if (pages.size() == 1) {
      pages.set(0, pages.get(0).spread());
    }
    pages.addAll(onFewest(usual, board -> series(board, first.tail())));
    return List.copyOf(pages);
  }

  private List<PageOfParts> series(Board board, int told) {
    return new Paginator(board, FigureWords.nextHead(board))
        .pages(chunks(board, false), FigureWords.tailOfSeries(board, told));
  }

  /**
   * The pages of the pooled values.
   *
   * @param tail which of the tails they have, from 0
   */
  private record First(List<PageOfParts> pages, int tail) {}

  /** One page if any letters and any tail allow it. */
  private First first() {
    First first = new First(List.of(), 0);
    for (Style style : List.of(setting.style(0), setting.style(Integer.MAX_VALUE))) {
      Board board = Board.compared(forest, style);
      List<List<PagePart>> tails = FigureWords.tailsOfCompared(board);
      for (int tail = 0; tail < tails.size(); tail++) {
        first = new First(compared(board, tails.get(tail)), tail);
        if (first.pages().size() == 1) {
          return first;
        }
      }
    }
    return first;
  }

  private List<PageOfParts> compared(Board board, List<PagePart> tail) {
    List<Paginator.Chunk> chunks = new ArrayList<>();
    for (Block block : forest.blocks()) {
      PagePart line = new ComparedLine(board, block.name(), block.summary(), block.rows());
      chunks.add(new Paginator.Chunk(block.name(), true, List.of(Sized.of(line))));
    }
    forest
        .overall()
        .map(all -> new ComparedLine(board, all.label(), all, List.of()))
        .ifPresent(line -> chunks.add(new Paginator.Chunk("", true, List.of(Sized.of(line)))));
    return new Paginator(board, FigureWords.firstHead(board)).pages(chunks, tail);
  }

  private List<Paginator.Chunk> chunks(Board board, boolean summaries) {
    List<Paginator.Chunk> chunks = new ArrayList<>();
    boolean first = true;
    for (Block block : forest.blocks()) {
      if (!summaries && block.rows().isEmpty()) {
        continue;
      }
      List<PagePart> together = new ArrayList<>();
      together.add(new BlockHead(board, block.name(), first));
      first = false;
      boolean starts = true;
      List<ForestRow> rows = block.rows();
      for (int i = 0; i < rows.size(); i++) {
        together.add(series(board, rows.get(i)));
        // The last series stays with the summary under it.
        if (i < rows.size() - 1 || !summaries) {
          chunks.add(new Paginator.Chunk(block.name(), starts, List.copyOf(together)));
          together.clear();
          starts = false;
        }
      }
      if (summaries) {
        together.add(summary(board, block.summary(), false));
        chunks.add(new Paginator.Chunk(block.name(), starts, List.copyOf(together)));
      }
    }
    if (summaries) {
      forest
          .overall()
          .map(all -> summary(board, all, true))
          .ifPresent(all -> chunks.add(new Paginator.Chunk("", true, List.of(all))));
    }
    return chunks;
  }

  private static PagePart series(Board board, ForestRow row) {
    if (!board.style().sheet().stacked()) {
      return Sized.of(new SeriesLine(board, row));
    }
    boolean phone = board.style().sheet().onScreen();
    return Sized.of(phone ? new SeriesCard(board, row) : new ColumnCard(board, row));
  }

  private static PagePart summary(Board board, ForestSummary summary, boolean overall) {
    if (summary instanceof ForestSummary.Pooled pooled) {
      return new SummaryLine(board, pooled, overall);
    }
    return new NoSummaryLine(board, (ForestSummary.NotPooled) summary);
  }
}
