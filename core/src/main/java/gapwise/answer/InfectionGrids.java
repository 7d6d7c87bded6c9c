package gapwise.answer;

import gapwise.evidence.Answer;
import gapwise.evidence.LengthRange;
import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * How much is recorded of each method at each size, of all and apart by infection at the start.
 *
 * @param all whatever is said of infection
 * @param apart by each answer; groups of which nothing is said of infection are in none of them
 */
public record InfectionGrids(EvidenceGrid all, Map<Answer, EvidenceGrid> apart) {
  public InfectionGrids {
    apart = Collections.unmodifiableMap(new EnumMap<>(apart));
  }

  /**
   * Counts what a request finds, in one pass over the index.
   *
   * @param bands sizes; the upper end of each belongs to the next
   */
  public static InfectionGrids of(
      StudySearch search, SearchRequest request, List<LengthRange> bands) {
    EvidenceGrid.Sum all = new EvidenceGrid.Sum(bands);
    Map<Answer, EvidenceGrid.Sum> apart = new EnumMap<>(Answer.class);
    for (Answer answer : Answer.values()) {
      apart.put(answer, new EvidenceGrid.Sum(bands));
    }
    search.eachArm(
        request,
        arm -> {
          all.add(arm);
          arm.infected().map(apart::get).ifPresent(sum -> sum.add(arm));
        });
    Map<Answer, EvidenceGrid> grids = new EnumMap<>(Answer.class);
    apart.forEach((answer, sum) -> grids.put(answer, sum.grid()));
    return new InfectionGrids(all.grid(), grids);
  }
}
