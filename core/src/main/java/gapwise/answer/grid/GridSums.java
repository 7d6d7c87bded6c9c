package gapwise.answer.grid;

import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Method;
import gapwise.search.IndexedArm;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Grids added up side by side, each of some of the arms. Where an arm stands is found once, however
 * many grids it is added to. The arms of a study must come one after another.
 */
final class GridSums {
  private static final Map<String, Integer> ROW_OF_METHOD = rowOfMethod();

  /** Row of all methods together, after those of each. */
  private static final int ALL_METHODS = ROW_OF_METHOD.size();

  private final List<LengthRange> bands;
  private final double[] from;
  private final double[] to;
  private final int places;
  private final TallySums sums;
  private Optional<IndexedArm> taken = Optional.empty();
  private String lastStudy = "";
  private int study;
  private int row;
  private int place;

  /**
   * @param bands sizes in order, apart from one another; the upper end of each belongs to the next
   * @param grids how many grids
   */
  GridSums(List<LengthRange> bands, int grids) {
    this.bands = bands;
    this.from = bands.stream().mapToDouble(LengthRange::fromCentimetres).toArray();
    this.to = bands.stream().mapToDouble(LengthRange::toCentimetres).toArray();
    // A row has its sizes, then no size, then a size outside all bands, then all.
    this.places = from.length + 3;
    this.sums = new TallySums(grids * (ALL_METHODS + 1) * places);
  }

  private static Map<String, Integer> rowOfMethod() {
    Map<String, Integer> rows = new HashMap<>();
    Method.vocabulary().all().forEach(method -> rows.put(method.code(), rows.size()));
    return rows;
  }

  /** Finds where an arm stands. */
  void take(IndexedArm next) {
    taken = Optional.of(next);
    if (!next.studyId().equals(lastStudy)) {
      lastStudy = next.studyId();
      study++;
    }
    row = ROW_OF_METHOD.getOrDefault(next.method(), ALL_METHODS);
    place =
        next.centreCentimetres().isPresent()
            ? band(next.centreCentimetres().getAsDouble())
            : from.length;
  }

  private int band(double centimetres) {
    int last = -1;
    for (int band = 0; band < from.length; band++) {
      last = centimetres >= from[band] ? band : last;
    }
    return last >= 0 && centimetres < to[last] ? last : from.length + 1;
  }

  /** Adds the arm last taken to a grid. */
  void addTo(int grid) {
    add(grid, ALL_METHODS);
    if (row != ALL_METHODS) {
      add(grid, row);
    }
  }

  private void add(int grid, int toRow) {
    int start = start(grid, toRow);
    IndexedArm arm = taken.orElseThrow();
    sums.add(start + place, study, arm);
    sums.add(start + places - 1, study, arm);
  }

  private int start(int grid, int ofRow) {
    return (grid * (ALL_METHODS + 1) + ofRow) * places;
  }

  EvidenceGrid grid(int grid) {
    Map<Method, EvidenceGrid.Row> rows = new LinkedHashMap<>();
    for (Method method : Method.vocabulary().all()) {
      int start =
          start(grid, Objects.requireNonNull(ROW_OF_METHOD.get(method.code()), method.code()));
      if (!sums.isNothing(start + places - 1)) {
        rows.put(method, row(start));
      }
    }
    return new EvidenceGrid(bands, rows, row(start(grid, ALL_METHODS)));
  }

  private EvidenceGrid.Row row(int start) {
    return new EvidenceGrid.Row(
        IntStream.range(0, from.length).mapToObj(band -> sums.tally(start + band)).toList(),
        sums.tally(start + from.length),
        sums.tally(start + places - 1));
  }
}
