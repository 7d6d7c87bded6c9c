package gapwise.server.page.studies;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.PatientsMeant;
import gapwise.evidence.AllGroups;
import gapwise.evidence.Arm;
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
import gapwise.wording.Moneys;
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
  private static final Optional<String> ALL_GROUPS = Optional.of(say("studies.of-all-groups"));

  private final Selector selector;

  public SelectedValues(Selector selector) {
    this.selector = selector;
  }

  @Override
  public Map<ArmHit, ArmValue> of(
      Outcome outcome, Optional<LengthRange> lengths, List<ArmHit> arms) {
    SearchRequest among =
        lengths
            .map(range -> SearchRequest.EVERYTHING.withDefect(range, DefectMatch.OVERLAP))
            .orElse(SearchRequest.EVERYTHING);
    Question question = new Question(outcome, among, Optional.empty(), 1);
    Map<ArmHit, ArmValue> values = new HashMap<>();
    for (SelectedRow row : selector.rowsOf(question, arms)) {
      if (AllGroups.is(row.study(), row.arm())) {
        row.study()
            .arms()
            .forEach(arm -> values.put(hit(row, arm), words(outcome, row, ALL_GROUPS)));
      } else {
        values.put(hit(row, row.arm()), words(outcome, row, Optional.empty()));
      }
    }
    return values;
  }

  private static ArmHit hit(SelectedRow row, Arm arm) {
    return new ArmHit(row.study().id(), arm.id());
  }

  private static ArmValue words(Outcome outcome, SelectedRow row, Optional<String> ofWhom) {
    return new ArmValue(
        withMeaning(Values.of(outcome, row.value()), row, ofWhom),
        withMeaning(Values.inList(outcome, row.value()), row, ofWhom));
  }

  /** The value with what must be known to read it. */
  private static Values withMeaning(Values values, SelectedRow row, Optional<String> ofWhom) {
    List<String> share = new ArrayList<>();
    if (!values.share().isEmpty()) {
      share.add(values.share());
    }
    PatientsMeant.words(row).ifPresent(share::add);
    row.report().flatMap(OutcomeReport::money).map(Moneys::words).ifPresent(share::add);
    row.otherSideWords().ifPresent(share::add);
    ofWhom.ifPresent(share::add);
    row.clock()
        .map(Coded::label)
        .ifPresent(clock -> share.add(say("studies.from-clock", Map.of("clock", clock))));
    return new Values(values.counted(), String.join(", ", share));
  }
}
