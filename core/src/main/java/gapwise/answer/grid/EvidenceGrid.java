package gapwise.answer.grid;

import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Method;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

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

    private static Row nothing(int bands) {
      return new Row(Collections.nCopies(bands, Tally.NOTHING), Tally.NOTHING, Tally.NOTHING);
    }
  }

  public EvidenceGrid {
    bands = List.copyOf(bands);
    rows = Collections.unmodifiableMap(new LinkedHashMap<>(rows));
  }

  /** Counts what a request finds, in one pass over the index. */
  public static EvidenceGrid of(
      StudySearch search, SearchRequest request, List<LengthRange> bands) {
    GridSums sums = new GridSums(bands, 1);
    search.eachArm(
        request,
        arm -> {
          sums.take(arm);
          sums.addTo(0);
        });
    return sums.grid(0);
  }

  /** What is recorded of a method; nothing where there is nothing. */
  public Row row(Method method) {
    Row row = rows.get(method);
    return row == null ? Row.nothing(bands.size()) : row;
  }
}
