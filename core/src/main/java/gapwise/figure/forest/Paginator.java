package gapwise.figure.forest;

import gapwise.budget.Work;
import gapwise.figure.drawing.PagePart;
import gapwise.figure.drawing.Stack;
import gapwise.figure.page.Strip;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Fills pages with chunks of rows and what follows them; without a page height there is one page.
 * Whatever follows stands under rows: where it does not fit under the last of them, some of those
 * go on to a further page with it.
 */
final class Paginator {
  private final Board board;
  private final List<PagePart> firstHead;
  private final double pageHeight;
  private final List<PagePart> strip;
  private final AxisFoot axis;
  private final double footAndMargins;

  /** Parts that must stay together, and the block they belong to. */
  record Chunk(String block, boolean startsBlock, List<PagePart> parts) {
    double height() {
      return Stack.height(parts);
    }
  }

  /** What stands on one page between its head and its foot. */
  private record Laid(List<Chunk> chunks, List<PagePart> tail) {
    Laid() {
      this(new ArrayList<>(), new ArrayList<>());
    }
  }

  /**
   * Pages of one figure.
   *
   * @param firstHead what stands over the first page
   */
  Paginator(Board board, List<PagePart> firstHead) {
    this.board = board;
    this.firstHead = firstHead;
    this.pageHeight = board.style().sheet().pageHeight().orElse(Double.POSITIVE_INFINITY);
    this.strip = Strip.of(board.forest().provenance(), board.style());
    this.axis = new AxisFoot(board);
    this.footAndMargins =
        Stack.height(FigureWords.footOfMany(board)) + Stack.margins(board.style().sheet().margin());
  }

  List<PageOfParts> pages(List<Chunk> chunks, List<PagePart> tail) {
    List<Laid> laid = filled(chunks);
    place(tail, laid);
    List<PageOfParts> pages = new ArrayList<>();
    for (int i = 0; i < laid.size(); i++) {
      pages.add(page(i, laid.get(i)));
    }
    return List.copyOf(pages);
  }

  /** As many chunks on each page as fit, one at least. */
  private List<Laid> filled(List<Chunk> chunks) {
    List<Laid> pages = new ArrayList<>();
    Laid page = new Laid();
    pages.add(page);
    double left = room(0);
    for (Chunk chunk : chunks) {
      Work.check();
      double needed = chunk.height();
      if (!page.chunks().isEmpty() && left < needed) {
        page = new Laid();
        left = room(pages.size());
        pages.add(page);
        left -= continued(chunk).map(PagePart::height).orElse(0.0);
      }
      page.chunks().add(chunk);
      left -= needed;
    }
    return pages;
  }

  private void place(List<PagePart> tail, List<Laid> pages) {
    Laid last = pages.get(pages.size() - 1);
    double left = left(pages.size() - 1, last);
    if (Stack.height(tail) <= left) {
      last.tail().addAll(tail);
      return;
    }
    for (int moved = last.chunks().size() / 2; moved > 0; moved--) {
      Laid next = new Laid();
      next.chunks()
          .addAll(last.chunks().subList(last.chunks().size() - moved, last.chunks().size()));
      if (Stack.height(tail) <= left(pages.size(), next)) {
        last.chunks().removeAll(next.chunks());
        next.tail().addAll(tail);
        pages.add(next);
        return;
      }
    }
    for (PagePart part : tail) {
      if (left < part.height() && !(last.chunks().isEmpty() && last.tail().isEmpty())) {
        last = new Laid();
        left = roomUnder(FigureWords.titleAgain(board));
        pages.add(last);
      }
      last.tail().add(part);
      left -= part.height();
    }
  }

  /** Room for chunks and tail on the page of a number from 0. */
  private double room(int page) {
    return roomUnder(page == 0 ? firstHead : FigureWords.nextHead(board)) - axis.height();
  }

  private double roomUnder(List<PagePart> head) {
    return pageHeight - Stack.height(strip) - Stack.height(head) - footAndMargins;
  }

  private double left(int number, Laid page) {
    double taken = Stack.height(plotted(page, number));
    return room(number) - taken - Stack.height(page.tail());
  }

  /** The name of a block again where its rows go on. */
  private Optional<PagePart> continued(Chunk first) {
    return first.startsBlock() || first.block().isBlank()
        ? Optional.empty()
        : Optional.of(new BlockHead(board, FigureWords.continued(first.block()), true));
  }

  private List<PagePart> plotted(Laid page, int number) {
    List<PagePart> plotted = new ArrayList<>();
    if (number > 0 && !page.chunks().isEmpty()) {
      continued(page.chunks().get(0)).ifPresent(plotted::add);
    }
    page.chunks().forEach(chunk -> plotted.addAll(chunk.parts()));
    return plotted;
  }

  private PageOfParts page(int number, Laid page) {
    List<PagePart> plotted = plotted(page, number);
    List<PagePart> nextHead =
        plotted.isEmpty() ? FigureWords.titleAgain(board) : FigureWords.nextHead(board);
    return new PageOfParts(
        board,
        strip,
        number == 0 ? firstHead : nextHead,
        plotted,
        plotted.isEmpty() ? Optional.empty() : Optional.of(axis),
        List.copyOf(page.tail()));
  }
}
