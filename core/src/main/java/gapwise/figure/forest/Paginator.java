package gapwise.figure.forest;

import gapwise.budget.Work;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Stack;
import gapwise.figure.page.Strip;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Fills pages with the parts of a figure; without a page height there is one page. */
final class Paginator {
  private final Board board;
  private final double pageHeight;
  private final List<PagePart> strip;
  private final List<PagePart> foot;
  private final AxisFoot axis;
  private final List<PageOfParts> pages = new ArrayList<>();

  private List<PagePart> head;

  /** Height of what stands on the page under way whatever is plotted: head, axis, foot, margins. */
  private double around;

  private final List<PagePart> plotted = new ArrayList<>();
  private final List<PagePart> tail = new ArrayList<>();
  private double filled = 0;

  /** Parts that must stay together, and the block they belong to. */
  private record Chunk(String block, boolean startsBlock, List<PagePart> parts) {}

  Paginator(Board board) {
    this.board = board;
    this.pageHeight = board.style().sheet().pageHeight().orElse(Double.POSITIVE_INFINITY);
    this.strip =
        board.forest().provenance().demonstration()
            ? List.of(Strip.invented(board.style()))
            : List.of();
    this.foot = FigureWords.foot(board);
    this.axis = new AxisFoot(board);
    begin(FigureWords.firstHead(board));
  }

  private void begin(List<PagePart> pageHead) {
    head = pageHead;
    around =
        Stack.height(strip)
            + Stack.height(head)
            + axis.height()
            + Stack.height(foot)
            + Stack.margins(margin());
  }

  List<PageOfParts> pages() {
    for (Chunk chunk : chunks()) {
      Work.check();
      double needed = Stack.height(chunk.parts());
      if (!plotted.isEmpty() && left() < needed) {
        turn();
        if (!chunk.startsBlock() && !chunk.block().isBlank()) {
          plot(new BlockHead(board, FigureWords.continued(chunk.block()), true));
        }
      }
      chunk.parts().forEach(this::plot);
    }
    for (PagePart part : FigureWords.tail(board)) {
      if (left() < part.height() && !(plotted.isEmpty() && tail.isEmpty())) {
        turn();
      }
      tail.add(part);
      filled += part.height();
    }
    turn();
    return List.copyOf(pages);
  }

  private void plot(PagePart part) {
    plotted.add(part);
    filled += part.height();
  }

  /** Room left on the page under what is already on it. */
  private double left() {
    return pageHeight - filled - around;
  }

  private double margin() {
    return board.style().sheet().margin();
  }

  /** Takes the page as it stands and begins the next. */
  private void turn() {
    boolean onlyTail = plotted.isEmpty() && !pages.isEmpty();
    pages.add(
        new PageOfParts(
            strip,
            onlyTail ? FigureWords.titleAgain(board) : head,
            List.copyOf(plotted),
            plotted.isEmpty() ? Optional.empty() : Optional.of(axis),
            List.copyOf(tail),
            foot,
            margin()));
    plotted.clear();
    tail.clear();
    filled = 0;
    begin(FigureWords.nextHead(board));
  }

  private List<Chunk> chunks() {
    List<Chunk> chunks = new ArrayList<>();
    boolean first = true;
    for (Block block : board.forest().blocks()) {
      List<PagePart> together = new ArrayList<>();
      together.add(new BlockHead(board, block.name(), first));
      first = false;
      boolean starts = true;
      List<ForestRow> rows = block.rows();
      for (int i = 0; i < rows.size() - 1; i++) {
        together.add(series(rows.get(i)));
        chunks.add(new Chunk(block.name(), starts, List.copyOf(together)));
        together.clear();
        starts = false;
      }
      // The last series stays with the summary under it.
      if (!rows.isEmpty()) {
        together.add(series(rows.get(rows.size() - 1)));
      }
      together.add(summary(block.summary(), false));
      chunks.add(new Chunk(block.name(), starts, List.copyOf(together)));
    }
    board
        .forest()
        .overall()
        .ifPresent(all -> chunks.add(new Chunk("", true, List.of(summary(all, true)))));
    return chunks;
  }

  private PagePart series(ForestRow row) {
    return Sized.of(
        board.style().sheet().stacked() ? new SeriesCard(board, row) : new SeriesLine(board, row));
  }

  private PagePart summary(ForestSummary summary, boolean overall) {
    if (summary instanceof ForestSummary.Pooled pooled) {
      return new SummaryLine(board, pooled, overall);
    }
    return new NoSummaryLine(board, (ForestSummary.NotPooled) summary);
  }
}
