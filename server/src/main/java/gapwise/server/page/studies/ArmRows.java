package gapwise.server.page.studies;

import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.search.SearchAnswer.ArmHit;
import gapwise.search.SearchRequest;
import gapwise.server.address.Address;
import gapwise.server.address.Filters;
import gapwise.server.address.ListColumn;
import gapwise.wording.Values;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;

/** Makes the lines of groups that were found, with what each reports of the outcome asked for. */
final class ArmRows {
  private final BiFunction<List<ArmHit>, List<ListColumn>, List<ArmRow>> plain;
  private final ArmValues values;
  private final Function<ArmValue, Values> shown;

  /**
   * @param plain makes the lines without the value
   * @param shown what is shown of a value
   */
  ArmRows(
      BiFunction<List<ArmHit>, List<ListColumn>, List<ArmRow>> plain,
      ArmValues values,
      Function<ArmValue, Values> shown) {
    this.plain = plain;
    this.values = values;
    this.shown = shown;
  }

  /** What is asked of each group: perhaps an outcome, perhaps of a missing length. */
  record Question(Optional<Outcome> outcome, Optional<LengthRange> lengths) {
    /** What the filters of an address ask, which were read as a request. */
    static Question of(Address address, SearchRequest request) {
      return new Question(Filters.outcome(address), request.lengthsOfPatients());
    }
  }

  /**
   * Lines in the order of the hits; a study that was removed since it was found is passed over.
   *
   * @param asked what is asked of each
   */
  List<ArmRow> of(List<ArmHit> hits, List<ListColumn> columns, Question asked) {
    List<ArmRow> rows = counted(plain.apply(hits, columns), asked);
    int place = columns.indexOf(ListColumn.VALUE);
    if (asked.outcome().isEmpty() || place < 0) {
      return rows;
    }
    Outcome outcome = asked.outcome().get();
    Map<ArmHit, ArmValue> known = values.of(outcome, asked.lengths(), hits);
    return rows.stream()
        .map(
            row ->
                row.withValue(
                    place, outcome.label(), Optional.ofNullable(known.get(row.hit())).map(shown)))
        .toList();
  }

  private static List<ArmRow> counted(List<ArmRow> rows, Question asked) {
    return asked
        .lengths()
        .map(lengths -> rows.stream().map(row -> row.among(lengths)).toList())
        .orElse(rows);
  }
}
