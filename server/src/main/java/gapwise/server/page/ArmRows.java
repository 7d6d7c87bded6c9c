package gapwise.server.page;

import gapwise.evidence.Outcome;
import gapwise.evidence.Study;
import gapwise.search.SearchAnswer.ArmHit;
import gapwise.search.SearchRequest;
import gapwise.wording.Values;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Makes the lines of groups that were found, reading the records of these alone. */
final class ArmRows {
  private final Function<Set<String>, Map<String, Study>> studies;
  private final ArmValues values;

  ArmRows(Function<Set<String>, Map<String, Study>> studies, ArmValues values) {
    this.studies = studies;
    this.values = values;
  }

  /**
   * Lines in the order of the hits; a study that was removed since it was found is passed over.
   *
   * @param among what was asked
   */
  List<ArmRow> of(List<ArmHit> hits, List<ListColumn> columns, Question asked) {
    Map<String, Study> read = studies(hits);
    Map<ArmHit, Values> known =
        asked.outcome().filter(outcome -> columns.contains(ListColumn.VALUE)).isPresent()
            ? values.of(asked.outcome().get(), asked.among(), hits)
            : Map.of();
    Optional<String> head = asked.outcome().map(Outcome::label);
    List<ArmRow> rows = new ArrayList<>();
    for (ArmHit hit : hits) {
      Optional.ofNullable(read.get(hit.studyId()))
          .ifPresent(
              study ->
                  study
                      .arm(hit.armId())
                      .map(
                          arm ->
                              ArmRow.of(
                                  study, arm, columns, head, Optional.ofNullable(known.get(hit))))
                      .ifPresent(rows::add));
    }
    return rows;
  }

  /** The records of the groups, by study. */
  Map<String, Study> studies(List<ArmHit> hits) {
    return studies.apply(hits.stream().map(ArmHit::studyId).collect(Collectors.toSet()));
  }

  /** What is asked: perhaps an outcome, among the groups that a search finds. */
  record Question(Optional<Outcome> outcome, SearchRequest among) {}
}
