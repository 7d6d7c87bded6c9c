package gapwise.answer;

import gapwise.evidence.LengthRange;
import gapwise.evidence.Method;
import gapwise.search.IndexedArm;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * How much is recorded of each method at each size of missing bone, by the mean or median of each
 * group of patients.
 *
 * @param bands sizes; the upper end of each belongs to the next
 * @param rows methods of which there is anything, in the order of the vocabulary
 * @param all all methods together
 */
public record EvidenceGrid(List<LengthRange> bands, Map<Method, Row> rows, Row all) {
  /**
   * One method, or all.
   *
   * @param banded in the order of the sizes
   * @param unsized groups whose paper gives no middle length
   * @param all groups of every size and of none
   */
  public record Row(List<Tally> banded, Tally unsized, Tally all) {
    public Row {
      banded = List.copyOf(banded);
    }
  }

  public EvidenceGrid {
    bands = List.copyOf(bands);
    rows = Collections.unmodifiableMap(new LinkedHashMap<>(rows));
  }

  /** Counts what a request finds, in one pass over the index. */
  public static EvidenceGrid of(
      StudySearch search, SearchRequest request, List<LengthRange> bands) {
    Sum sum = new Sum(bands);
    search.eachArm(request, sum::add);
    return sum.grid();
  }

  /** What is recorded of a method; nothing where there is nothing. */
  public Row row(Method method) {
    return rows.getOrDefault(
        method,
        new Row(Collections.nCopies(bands.size(), Tally.NOTHING), Tally.NOTHING, Tally.NOTHING));
  }

  /** Adds up. The arms of a study must come one after another. */
  static final class Sum {
    private final List<LengthRange> bands;
    private final Map<String, RowSum> sums = new LinkedHashMap<>();
    private final RowSum all;

    Sum(List<LengthRange> bands) {
      this.bands = bands;
      this.all = new RowSum(bands);
    }

    void add(IndexedArm arm) {
      sums.computeIfAbsent(arm.method(), code -> new RowSum(bands)).add(arm);
      all.add(arm);
    }

    EvidenceGrid grid() {
      Map<Method, Row> rows = new LinkedHashMap<>();
      for (Method method : Method.vocabulary().all()) {
        if (sums.containsKey(method.code())) {
          rows.put(method, sums.get(method.code()).row());
        }
      }
      return new EvidenceGrid(bands, rows, all.row());
    }
  }

  private static final class RowSum {
    private final List<LengthRange> bands;
    private final List<Tally.Sum> banded = new ArrayList<>();
    private final Tally.Sum unsized = new Tally.Sum();
    private final Tally.Sum all = new Tally.Sum();

    RowSum(List<LengthRange> bands) {
      this.bands = bands;
      Stream.generate(Tally.Sum::new).limit(bands.size()).forEach(banded::add);
    }

    void add(IndexedArm arm) {
      all.add(arm);
      if (arm.centreCentimetres().isEmpty()) {
        unsized.add(arm);
        return;
      }
      double centre = arm.centreCentimetres().getAsDouble();
      for (int i = 0; i < banded.size(); i++) {
        LengthRange band = bands.get(i);
        if (centre >= band.fromCentimetres() && centre < band.toCentimetres()) {
          banded.get(i).add(arm);
        }
      }
    }

    Row row() {
      return new Row(banded.stream().map(Tally.Sum::tally).toList(), unsized.tally(), all.tally());
    }
  }
}
