package gapwise.answer.grid;

import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.search.IndexedArm;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Consumer;

/**
 * How much is recorded of each method at each size, of all and apart by infection at the start.
 *
 * @param all whatever is said of infection
 * @param apart by each answer told apart; groups of another, or of which nothing is said of
 *     infection, are in none of them
 */
public record InfectionGrids(EvidenceGrid all, Map<YesOrNo, EvidenceGrid> apart) {
  public InfectionGrids {
    apart = Collections.unmodifiableMap(new EnumMap<>(apart));
  }

  /** Of the groups that are recorded so. */
  public EvidenceGrid of(YesOrNo answer) {
    return Objects.requireNonNull(apart.get(answer), answer::label);
  }

  /** Adds up. The arms of a study must come one after another. */
  public static final class Sum implements Consumer<IndexedArm> {
    private final GridSums sums;
    private final List<YesOrNo> answers;

    /**
     * @param bands sizes; the upper end of each belongs to the next
     * @param answers those that are told apart, each once
     */
    public Sum(List<LengthRange> bands, List<YesOrNo> answers) {
      this.sums = new GridSums(List.copyOf(bands), 1 + answers.size());
      this.answers = List.copyOf(answers);
    }

    @Override
    public void accept(IndexedArm arm) {
      sums.take(arm);
      sums.addTo(0);
      int answer = arm.infected().isPresent() ? answers.indexOf(arm.infected().get()) : -1;
      if (answer >= 0) {
        sums.addTo(1 + answer);
      }
    }

    /** What was added up. */
    public InfectionGrids grids() {
      Map<YesOrNo, EvidenceGrid> apart = new EnumMap<>(YesOrNo.class);
      for (YesOrNo answer : answers) {
        apart.put(answer, sums.grid(1 + answers.indexOf(answer)));
      }
      return new InfectionGrids(sums.grid(0), apart);
    }
  }
}
