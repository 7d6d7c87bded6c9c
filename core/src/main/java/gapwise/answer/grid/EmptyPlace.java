package gapwise.answer.grid;

import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Method;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;

/**
 * A method at neighbouring sizes of which nothing is recorded.
 *
 * @param method the method
 * @param range the sizes, joined
 * @param expected patients that would stand here if the method had been used alike at every size
 *     and all had been reported: patients of the method, whatever was reported of them, times the
 *     share that these sizes have among all patients whose group has a known size
 * @param ofMethod what is recorded of the method at all
 * @param unsized what the grid holds of the method with no middle length
 * @param ofSizes patients recorded at these sizes after any method
 */
public record EmptyPlace(
    Method method,
    LengthRange range,
    double expected,
    Tally ofMethod,
    Tally unsized,
    long ofSizes) {
  /** Codes that hold several ways of treating together, of which nobody would make a study. */
  private static final Set<String> LUMPED =
      Set.of("amputation", "combined", "mixed-salvage", "other");

  /**
   * The empty places of a grid, those first where most patients would be expected.
   *
   * @param grid what is looked at
   * @param wide all that is recorded, by the same sizes
   * @param methods the methods to look at; those that hold several ways together are passed over
   */
  public static List<EmptyPlace> of(EvidenceGrid grid, EvidenceGrid wide, List<Method> methods) {
    long[] ofBands = wide.all().banded().stream().mapToLong(Tally::patients).toArray();
    List<EmptyPlace> places = new ArrayList<>();
    for (Method method : toldApart(methods)) {
      EvidenceGrid.Row row = grid.row(method);
      int start = 0;
      while (start < grid.bands().size()) {
        int end = start;
        while (end < grid.bands().size() && row.banded().get(end).isNothing()) {
          end++;
        }
        if (end > start) {
          places.add(place(grid, wide, ofBands, method, start, end));
        }
        start = end + 1;
      }
    }
    places.sort(
        Comparator.comparingDouble(EmptyPlace::expected)
            .thenComparingLong(EmptyPlace::ofSizes)
            .reversed());
    return List.copyOf(places);
  }

  /** Those of some methods that are one way of treating each. */
  public static List<Method> toldApart(List<Method> methods) {
    return methods.stream().filter(method -> !LUMPED.contains(method.code())).toList();
  }

  private static EmptyPlace place(
      EvidenceGrid grid, EvidenceGrid wide, long[] ofBands, Method method, int start, int end) {
    long ofSizes = sum(ofBands, start, end);
    double share = ofSizes == 0 ? 0 : (double) ofSizes / sum(ofBands, 0, ofBands.length);
    Tally ofMethod = wide.row(method).all();
    LengthRange range =
        new LengthRange(
            grid.bands().get(start).fromCentimetres(), grid.bands().get(end - 1).toCentimetres());
    return new EmptyPlace(
        method, range, ofMethod.patients() * share, ofMethod, grid.row(method).unsized(), ofSizes);
  }

  private static long sum(long[] patients, int from, int to) {
    long sum = 0;
    for (int band = from; band < to; band++) {
      sum += patients[band];
    }
    return sum;
  }

  /** Whether another empty place of the same method lies wholly within this one. */
  public boolean covers(EmptyPlace other) {
    return method.equals(other.method())
        && range.fromCentimetres() <= other.range().fromCentimetres()
        && range.toCentimetres() >= other.range().toCentimetres();
  }
}
