package gapwise.server.page.studies;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.PatientsMeant;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.search.SearchAnswer.ArmHit;
import gapwise.search.SearchRequest;
import gapwise.search.SearchRequest.DefectMatch;
import gapwise.selection.Question;
import gapwise.selection.SelectedRow;
import gapwise.selection.Selector;
import gapwise.wording.Values;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The value that each group would bring into a pooled result, single patients included, on its own
 * clock, which is said; only the records of the groups shown are read.
 */
public final class SelectedValues implements ArmValues {
  private final Selector selector;

  public SelectedValues(Selector selector) {
    this.selector = selector;
  }

  @Override
  public Map<ArmHit, Values> of(Outcome outcome, Optional<LengthRange> lengths, List<ArmHit> arms) {
    SearchRequest among =
        lengths
            .map(range -> SearchRequest.EVERYTHING.withDefect(range, DefectMatch.OVERLAP))
            .orElse(SearchRequest.EVERYTHING);
    Question question = new Question(outcome, among, Optional.empty(), 1);
    Map<ArmHit, Values> values = new HashMap<>();
    for (SelectedRow row : selector.rowsOf(question, arms)) {
      values.put(new ArmHit(row.study().id(), row.arm().id()), words(outcome, row));
    }
    return values;
  }

  private static Values words(Outcome outcome, SelectedRow row) {
    Values values = Values.of(outcome, row.value());
    List<String> share = new ArrayList<>();
    if (!values.share().isEmpty()) {
      share.add(values.share());
    }
    PatientsMeant.words(row).ifPresent(share::add);
    row.report()
        .flatMap(OutcomeReport::money)
        .ifPresent(money -> share.add(money.currency().getCurrencyCode()));
    row.report()
        .flatMap(OutcomeReport::clock)
        .map(Coded::label)
        .ifPresent(clock -> share.add(say("studies.from-clock", Map.of("clock", clock))));
    return new Values(values.counted(), String.join(", ", share));
  }
}
