package gapwise.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** From a point or a box that a person drew to the words there, and back. */
public final class Places {
  /** A pointer may miss a word by so many points and still mean it. */
  private static final double MISS = 3;

  private Places() {}

  /** The word at a point, points from the top left corner. */
  public static Optional<Place> at(Page page, double x, double y) {
    Word nearest = null;
    double least = MISS;
    for (Word word : page.words()) {
      double away = away(word.wholeBox(), x, y);
      if (away < least) {
        least = away;
        nearest = word;
      }
    }
    return nearest == null ? Optional.empty() : of(page, List.of(nearest));
  }

  private static double away(Box box, double x, double y) {
    double across = Math.max(0, Math.max(box.left() - x, x - box.right()));
    double down = Math.max(0, Math.max(box.top() - y, y - box.bottom()));
    return Math.hypot(across, down);
  }

  /** The words whose middles lie in a box, in reading order; empty if there are none. */
  public static Optional<Place> in(Page page, Box box) {
    return of(page, page.words().stream().filter(w -> box.holdsMiddleOf(w.box())).toList());
  }

  /** The place of words of a page; empty without words. */
  public static Optional<Place> of(Page page, List<Word> words) {
    if (words.isEmpty()) {
      return Optional.empty();
    }
    List<Box> boxes = new ArrayList<>();
    Word before = words.get(0);
    boxes.add(before.box());
    for (Word word : words.subList(1, words.size())) {
      boolean sameLine =
          word.turn() == before.turn()
              && Math.abs(word.baseline() - before.baseline()) < 0.3 * word.size()
              && isNext(before, word);
      int last = boxes.size() - 1;
      if (sameLine) {
        boxes.set(last, boxes.get(last).with(word.box()));
      } else if (boxes.size() == Place.MOST_BOXES) {
        boxes.set(last, boxes.get(last).with(word.box()));
      } else {
        boxes.add(word.box());
      }
      before = word;
    }
    String text = words.stream().map(Word::text).collect(Collectors.joining(" "));
    return Optional.of(new Place(page.number(), boxes, text));
  }

  /** Beside the word before, not over the gap of two columns. */
  private static boolean isNext(Word before, Word word) {
    boolean level = word.turn() == Word.Turn.NONE || word.turn() == Word.Turn.OVER;
    double gap =
        level ? -before.box().sharedWidth(word.box()) : -before.box().sharedHeight(word.box());
    return gap < 8 * word.size();
  }

  /**
   * Finds the words of a known place again.
   *
   * @return the place as it stands now: where it was, or else where the same words stand nearest on
   *     the page; empty if they stand nowhere
   */
  public static Optional<Place> again(Page page, Place known) {
    if (page.number() != known.page()) {
      return Optional.empty();
    }
    List<Word> there = new ArrayList<>();
    for (Word word : page.words()) {
      if (known.boxes().stream().anyMatch(b -> b.grown(1).holdsMiddleOf(word.box()))) {
        there.add(word);
      }
    }
    Optional<Place> same = of(page, there);
    if (same.isPresent() && plain(same.get().words()).equals(plain(known.words()))) {
      return same;
    }
    Box was = Box.around(known.boxes());
    Optional<Place> nearest = Optional.empty();
    double least = Double.MAX_VALUE;
    for (Place place : all(page, known.words())) {
      Box is = Box.around(place.boxes());
      double away = Math.hypot(is.middle() - was.middle(), is.centre() - was.centre());
      if (away < least) {
        least = away;
        nearest = Optional.of(place);
      }
    }
    return nearest;
  }

  /** Every place of a page at which words stand, in reading order. */
  public static List<Place> all(Page page, String words) {
    String[] sought = plain(words).split(" ");
    List<Place> found = new ArrayList<>();
    List<Word> all = page.words();
    for (int i = 0; i + sought.length <= all.size() && !sought[0].isEmpty(); i++) {
      boolean same = true;
      for (int j = 0; j < sought.length && same; j++) {
        same = plain(all.get(i + j).text()).equals(sought[j]);
      }
      if (same) {
        of(page, all.subList(i, i + sought.length)).ifPresent(found::add);
      }
    }
    return found;
  }

  private static String plain(String words) {
    return words.strip().replaceAll("\\s+", " ");
  }
}
