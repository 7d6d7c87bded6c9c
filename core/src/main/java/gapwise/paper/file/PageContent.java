package gapwise.paper.file;

import gapwise.paper.Guard;
import gapwise.paper.Page;
import gapwise.paper.Page.Lettering;
import gapwise.paper.ReadingOrder;
import gapwise.paper.Refused;
import gapwise.paper.Word;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDPage;

/** Puts together what one going through a page gives. */
final class PageContent {
  /** A picture that fills so much of a page without words is a scan of it. */
  private static final double SCAN_SHARE = 0.3;

  private PageContent() {}

  static Page read(PDPage page, int number, Guard guard) throws IOException {
    DisplaySpace space = new DisplaySpace(page);
    if (!space.isUsable()) {
      throw new Guard.StoppedException(
          new Refused(
              Refused.Reason.DAMAGED,
              "Page " + number + " has no size, so nothing on it can be shown or read."));
    }
    boolean whole = ContentSize.check(page, guard);
    ContentReader reader = new ContentReader(page, space, guard);
    reader.processPage(page);
    List<Word> all = WordAssembly.of(reader.letters(), guard);
    List<Word> level = all.stream().filter(w -> w.turn() == Word.Turn.NONE).toList();
    ReadingOrder order = ReadingOrder.of(level, space.width(), guard);
    List<Word> words = new ArrayList<>();
    order.lines().forEach(line -> words.addAll(line.words()));
    all.stream().filter(w -> w.turn() != Word.Turn.NONE).forEach(words::add);
    return new Page(
        number,
        space.width(),
        space.height(),
        words,
        order.lines(),
        order.columns(),
        reader.paths(),
        reader.images(),
        lettering(reader, words, space),
        !whole || reader.isTroubled(),
        (int)
            words.stream().mapToLong(w -> w.text().chars().filter(c -> c == 0xFFFD).count()).sum());
  }

  private static Lettering lettering(ContentReader reader, List<Word> words, DisplaySpace space) {
    double area = space.width() * space.height();
    boolean filled =
        reader.images().stream().mapToDouble(b -> b.width() * b.height()).sum() > SCAN_SHARE * area;
    if (words.isEmpty()) {
      return filled ? Lettering.SCANNED : Lettering.NONE;
    }
    return reader.unseenLetters() * 2 > reader.letters().size()
        ? Lettering.GUESSED
        : Lettering.PRINTED;
  }
}
