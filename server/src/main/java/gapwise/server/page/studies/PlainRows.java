package gapwise.server.page.studies;

import gapwise.evidence.Study;
import gapwise.search.SearchAnswer.ArmHit;
import gapwise.server.address.ListColumn;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Words and draws groups that were found, reading the records of these alone. */
final class PlainRows {
  private final Function<Set<String>, Map<String, Study>> studies;

  PlainRows(Function<Set<String>, Map<String, Study>> studies) {
    this.studies = studies;
  }

  /** Lines in the order of the hits. */
  List<ArmRow> of(List<ArmHit> hits, List<ListColumn> columns) {
    Map<String, Study> read = studies(hits);
    List<ArmRow> rows = new ArrayList<>();
    for (ArmHit hit : hits) {
      Optional.ofNullable(read.get(hit.studyId()))
          .ifPresent(
              study ->
                  study
                      .arm(hit.armId())
                      .map(arm -> ArmRow.of(study, arm, columns))
                      .ifPresent(rows::add));
    }
    return rows;
  }

  /** The records of the groups, by study. */
  Map<String, Study> studies(List<ArmHit> hits) {
    return studies.apply(hits.stream().map(ArmHit::studyId).collect(Collectors.toSet()));
  }
}
