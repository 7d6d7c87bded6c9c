package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.Figure;
import gapwise.figure.FigureProvenance;
import gapwise.figure.Reference;
import gapwise.figure.drawing.Medium;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Setting;
import gapwise.figure.forest.Forest;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/**
 * A figure of perhaps more series than a page can draw: drawings show some and say which, its
 * numbers and citations are of all.
 *
 * @param drawn what is drawn; the whole figure where it is small enough
 * @param whole what its table lists
 * @param some says which are drawn; empty where all are
 */
public record Large<F extends Figure>(F drawn, F whole, Optional<String> some) implements Figure {
  /** More series nobody reads off a page, and these keep it below 400 kB (our choice). */
  static final int MOST_DRAWN = 80;

  /** A figure that is drawn whole. */
  Large(F whole) {
    this(whole, whole, Optional.empty());
  }

  public Large {
    Objects.requireNonNull(drawn, "drawn");
    Objects.requireNonNull(whole, "whole");
    Objects.requireNonNull(some, "some");
  }

  /**
   * A figure of rows, the heaviest of which are drawn where there are too many.
   *
   * @param rows of the whole figure
   * @param weight of a row
   * @param some makes the figure of some rows, which says that they are not all
   */
  public static <T> Large<Forest> ofRows(
      Forest whole,
      List<T> rows,
      ToDoubleFunction<T> weight,
      BiFunction<List<T>, String, Forest> some) {
    if (rows.size() <= MOST_DRAWN) {
      return new Large<>(whole);
    }
    String drawn = say("answer.drawn-of-rows", Map.of("drawn", MOST_DRAWN, "series", rows.size()));
    String said = withPooled(drawn, whole);
    return new Large<>(
        some.apply(largest(rows, MOST_DRAWN, weight), said), whole, Optional.of(said));
  }

  /**
   * Which series are drawn, and that what is pooled rests on all; of nothing pooled is not told.
   */
  static String withPooled(String drawn, Forest whole) {
    int pooled = whole.pooled().size();
    return pooled == 0
        ? drawn
        : drawn + " " + say("answer.pooled-from-all", Map.of("values", pooled));
  }

  @Override
  public String title() {
    return whole.title();
  }

  @Override
  public String description() {
    return drawn.description();
  }

  @Override
  public List<String> cautions() {
    return whole.cautions();
  }

  @Override
  public FigureProvenance provenance() {
    return whole.provenance();
  }

  @Override
  public List<Picture> draw(Setting setting) {
    return drawn.draw(setting);
  }

  @Override
  public int sheets(Medium medium) {
    return drawn.sheets(medium);
  }

  @Override
  public String csv() {
    return whole.csv();
  }

  @Override
  public List<Reference> references() {
    return whole.references();
  }

  /**
   * How many of each part may be drawn so that all parts together are no more than can be: the
   * largest number that does, at least 1.
   *
   * @param sizes of the parts
   */
  static int mostOfEach(List<Integer> sizes) {
    int most = 1;
    while (most < MOST_DRAWN && drawn(sizes, most + 1) <= MOST_DRAWN) {
      most++;
    }
    return most;
  }

  private static int drawn(List<Integer> sizes, int most) {
    return sizes.stream().mapToInt(size -> Math.min(size, most)).sum();
  }

  /** The largest of some, as they stand; of some that are equally large the first. */
  static <T> List<T> largest(List<T> all, int most, ToDoubleFunction<T> size) {
    if (all.size() <= most) {
      return all;
    }
    return order(all, size).subList(0, most).stream().sorted().map(all::get).toList();
  }

  /**
   * Some of all sizes, as they stand, evenly from the smallest to the largest: where small ones
   * tell another story than large ones, the largest alone would hide it.
   */
  static <T> List<T> ofAllSizes(List<T> all, int most, ToDoubleFunction<T> size) {
    if (all.size() <= most) {
      return all;
    }
    List<Integer> bySize = order(all, size);
    return IntStream.range(0, most)
        .map(one -> bySize.get((int) ((long) one * (all.size() - 1) / (most - 1))))
        .sorted()
        .mapToObj(all::get)
        .toList();
  }

  private static <T> List<Integer> order(List<T> all, ToDoubleFunction<T> size) {
    return IntStream.range(0, all.size())
        .boxed()
        .sorted(
            Comparator.comparingDouble((Integer at) -> size.applyAsDouble(all.get(at))).reversed())
        .toList();
  }
}
