package gapwise.server.page;

import gapwise.evidence.Outcome;
import gapwise.search.SearchAnswer.ArmHit;
import gapwise.search.SearchRequest;
import gapwise.selection.Question;
import gapwise.selection.SelectedRow;
import gapwise.server.answer.Answers;
import gapwise.server.wording.Values;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The values that would enter a pooled result, single patients included, so that a list and the
 * pooled result it leads to tell the same numbers.
 */
public final class SelectedValues implements ArmValues {
  private final Answers answers;

  public SelectedValues(Answers answers) {
    this.answers = answers;
  }

  @Override
  public Map<ArmHit, Values> of(Outcome outcome, SearchRequest among, List<ArmHit> arms) {
    Question question = new Question(outcome, among.withOutcomes(Set.of()), Optional.empty(), 1);
    Set<ArmHit> asked = new HashSet<>(arms);
    Map<ArmHit, Values> values = new HashMap<>();
    for (SelectedRow row : answers.select(question).rows()) {
      ArmHit hit = new ArmHit(row.study().id(), row.arm().id());
      if (asked.contains(hit)) {
        values.put(hit, Values.of(outcome, row.value()));
      }
    }
    return values;
  }
}
