package gapwise.answer;

import gapwise.evidence.Answer;
import gapwise.evidence.LengthRange;
import gapwise.search.IndexedArm;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;

/**
 * How much is recorded of each method at each size, of all and apart by infection at the start.
 *
 * @param all whatever is said of infection
 * @param apart by each answer that is given; groups of which nothing is said of infection are in
 *     none of them
 */
public record InfectionGrids(EvidenceGrid all, Map<Answer, EvidenceGrid> apart) {
  public InfectionGrids {
    apart = Collections.unmodifiableMap(new EnumMap<>(apart));
  }

  /** The grid of those with an answer; an empty one where there is none. */
  public EvidenceGrid of(Answer infected) {
    EvidenceGrid found = apart.get(infected);
    return found != null ? found : new EvidenceGrid.Sum(all.bands()).grid();
  }

  /** Adds up. The arms of a study must come one after another. */
  public static final class Sum implements Consumer<IndexedArm> {
    private final List<LengthRange> bands;
    private final EvidenceGrid.Sum all;
    private final Map<Answer, EvidenceGrid.Sum> apart = new EnumMap<>(Answer.class);

    /**
     * @param bands sizes; the upper end of each belongs to the next
     */
    public Sum(List<LengthRange> bands) {
      this.bands = List.copyOf(bands);
      this.all = new EvidenceGrid.Sum(bands);
    }

    @Override
    public void accept(IndexedArm arm) {
      all.add(arm);
      if (arm.infected().isPresent()) {
        apart.computeIfAbsent(arm.infected().get(), answer -> new EvidenceGrid.Sum(bands)).add(arm);
      }
    }

    /** What was added up. */
    public InfectionGrids grids() {
      Map<Answer, EvidenceGrid> grids = new EnumMap<>(Answer.class);
      apart.forEach((answer, sum) -> grids.put(answer, sum.grid()));
      return new InfectionGrids(all.grid(), grids);
    }
  }
}
