package gapwise.search;

import gapwise.evidence.unit.LengthRange;
import java.util.Set;
import org.apache.lucene.document.DoublePoint;
import org.apache.lucene.document.DoubleRange;
import org.apache.lucene.document.IntPoint;
import org.apache.lucene.search.BooleanClause.Occur;
import org.apache.lucene.search.BooleanQuery;
import org.apache.lucene.search.FieldExistsQuery;
import org.apache.lucene.search.MatchNoDocsQuery;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.TermInSetQuery;
import org.apache.lucene.util.BytesRef;

/** Turns the parts of a request into queries of the index. */
final class RequestQueries {
  private RequestQueries() {}

  /**
   * Text, years, follow-up and missing length: all but the filters that have counts beside them.
   */
  static Query base(SearchRequest request, Query text) {
    BooleanQuery.Builder query = new BooleanQuery.Builder().add(text, Occur.MUST);
    if (request.yearFrom().isPresent() || request.yearTo().isPresent()) {
      query.add(
          years(
              request.yearFrom().orElse(Integer.MIN_VALUE),
              request.yearTo().orElse(Integer.MAX_VALUE)),
          Occur.FILTER);
    }
    if (request.followUpFrom().isPresent()) {
      double least = ArmDocuments.unsignedZero(request.followUpFrom().getAsDouble());
      query.add(
          DoublePoint.newRangeQuery(ArmDocuments.FOLLOW_UP, least, Double.POSITIVE_INFINITY),
          Occur.FILTER);
    }
    if (request.defectMatch() == SearchRequest.DefectMatch.NO_CENTRE) {
      query.add(new FieldExistsQuery(ArmDocuments.DEFECT_CENTRE_ORDER), Occur.MUST_NOT);
      return query.build();
    }
    request
        .defect()
        .ifPresent(range -> query.add(defect(range, request.defectMatch()), Occur.FILTER));
    return query.build();
  }

  /** The same, narrowed by every filter. */
  static Query narrowed(SearchRequest request, Query text) {
    BooleanQuery.Builder query = new BooleanQuery.Builder();
    query.add(base(request, text), Occur.MUST);
    for (Filter filter : Filter.values()) {
      Set<String> codes = filter.asked(request);
      if (!codes.isEmpty()) {
        query.add(anyOf(filter, codes), Occur.FILTER);
      }
    }
    return query.build();
  }

  private static Query anyOf(Filter filter, Set<String> codes) {
    return new TermInSetQuery(
        filter.field(), codes.stream().map(Filter::term).map(BytesRef::new).toList());
  }

  private static Query years(int from, int to) {
    return from > to
        ? new MatchNoDocsQuery("the first year lies after the last")
        : IntPoint.newRangeQuery(ArmDocuments.YEAR, from, to);
  }

  private static Query defect(LengthRange range, SearchRequest.DefectMatch match) {
    double[] low = ArmDocuments.low(range);
    double[] high = ArmDocuments.high(range);
    if (match == SearchRequest.DefectMatch.CENTRE) {
      return DoublePoint.newRangeQuery(ArmDocuments.DEFECT_CENTRE, low, high);
    }
    return new BooleanQuery.Builder()
        .add(DoublePoint.newRangeQuery(ArmDocuments.DEFECT_OF_PATIENTS, low, high), Occur.SHOULD)
        .add(DoubleRange.newIntersectsQuery(ArmDocuments.DEFECT_RANGE, low, high), Occur.SHOULD)
        .build();
  }
}
