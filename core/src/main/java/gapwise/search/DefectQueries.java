package gapwise.search;

import gapwise.evidence.unit.LengthRange;
import gapwise.search.SearchRequest.DefectMatch;
import java.util.Optional;
import org.apache.lucene.document.DoublePoint;
import org.apache.lucene.document.DoubleRange;
import org.apache.lucene.search.BooleanClause.Occur;
import org.apache.lucene.search.BooleanQuery;
import org.apache.lucene.search.FieldExistsQuery;
import org.apache.lucene.search.MatchAllDocsQuery;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.TermQuery;

/** The missing length asked for as queries of the index. */
final class DefectQueries {
  private DefectQueries() {}

  /** What a request asks of the missing length; empty where it asks nothing. */
  static Optional<Query> of(SearchRequest request) {
    Optional<LengthRange> range = request.defect();
    return switch (request.defectMatch()) {
      case OVERLAP -> range.map(DefectQueries::reaching);
      case CENTRE -> range.map(DefectQueries::withCentre);
      case NO_CENTRE -> Optional.of(without(new MatchAllDocsQuery(), centreKnown()));
      case ONE_SIDED -> Optional.of(oneSided(range));
      case UNKNOWN -> Optional.of(unknown(range));
    };
  }

  /**
   * The same with arms of which it is not said whether they lie in the range, and with those that
   * reach into it and give no centre, where the centre is asked for.
   */
  static Optional<Query> orNotSaid(SearchRequest request) {
    Optional<LengthRange> range = request.defect();
    if (range.isEmpty() || request.defectMatch() == DefectMatch.NO_CENTRE) {
      return of(request);
    }
    BooleanQuery.Builder any =
        new BooleanQuery.Builder()
            .add(oneSided(range), Occur.SHOULD)
            .add(unknown(range), Occur.SHOULD);
    of(request).ifPresent(asked -> any.add(asked, Occur.SHOULD));
    if (request.defectMatch() == DefectMatch.CENTRE) {
      any.add(without(reaching(range.get()), centreKnown()), Occur.SHOULD);
    }
    return Optional.of(any.build());
  }

  /**
   * Arms of which one end alone is given, so that they may lie in a range, or no length at all.
   * Those of them that reach into it by what else is given are not taken off.
   */
  static Query oneEndOrUnknown(LengthRange range) {
    return new BooleanQuery.Builder()
        .add(intersecting(range), Occur.SHOULD)
        .add(lengthUnknown(), Occur.SHOULD)
        .build();
  }

  private static Query intersecting(LengthRange range) {
    return DoubleRange.newIntersectsQuery(ArmDocuments.DEFECT_ONE_SIDED, low(range), high(range));
  }

  private static Query lengthUnknown() {
    return new TermQuery(SegmentColumns.LENGTH_UNKNOWN);
  }

  private static Query withCentre(LengthRange range) {
    return DoublePoint.newRangeQuery(ArmDocuments.DEFECT_CENTRE, low(range), high(range));
  }

  /** Arms that reach into a range. */
  static Query reaching(LengthRange range) {
    return new BooleanQuery.Builder()
        .add(
            DoublePoint.newRangeQuery(ArmDocuments.DEFECT_OF_PATIENTS, low(range), high(range)),
            Occur.SHOULD)
        .add(
            DoubleRange.newIntersectsQuery(ArmDocuments.DEFECT_RANGE, low(range), high(range)),
            Occur.SHOULD)
        .add(
            DoubleRange.newWithinQuery(ArmDocuments.DEFECT_ONE_SIDED, low(range), high(range)),
            Occur.SHOULD)
        .build();
  }

  private static Query oneSided(Optional<LengthRange> asked) {
    LengthRange range = asked.orElse(LengthRange.from(0));
    Query open = intersecting(range);
    return asked.isPresent() ? without(open, reaching(range)) : open;
  }

  private static Query unknown(Optional<LengthRange> asked) {
    Query unknown = lengthUnknown();
    return asked.isPresent() ? without(unknown, reaching(asked.get())) : unknown;
  }

  private static Query centreKnown() {
    return new FieldExistsQuery(ArmDocuments.DEFECT_CENTRE_ORDER);
  }

  private static Query without(Query all, Query some) {
    return new BooleanQuery.Builder().add(all, Occur.MUST).add(some, Occur.MUST_NOT).build();
  }

  private static double[] low(LengthRange range) {
    return ArmDocuments.low(range);
  }

  private static double[] high(LengthRange range) {
    return ArmDocuments.high(range);
  }
}
