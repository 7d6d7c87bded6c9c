package gapwise.search;

import gapwise.evidence.unit.LengthRange;
import java.util.Set;
import org.apache.lucene.document.DoublePoint;
import org.apache.lucene.document.IntPoint;
import org.apache.lucene.search.BooleanClause.Occur;
import org.apache.lucene.search.BooleanQuery;
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
    BooleanQuery.Builder query = besideLength(request, text);
    DefectQueries.of(request).ifPresent(lengths -> query.add(lengths, Occur.FILTER));
    return query.build();
  }

  private static BooleanQuery.Builder besideLength(SearchRequest request, Query text) {
    BooleanQuery.Builder query = new BooleanQuery.Builder().add(text, Occur.MUST);
    if (request.years().narrows()) {
      query.add(years(request.years()), Occur.FILTER);
    }
    if (request.followUpFrom().isPresent()) {
      double least = ArmDocuments.unsignedZero(request.followUpFrom().getAsDouble());
      query.add(
          DoublePoint.newRangeQuery(ArmDocuments.FOLLOW_UP, least, Double.POSITIVE_INFINITY),
          Occur.FILTER);
    }
    return query;
  }

  /** The same, narrowed by every filter. */
  static Query narrowed(SearchRequest request, Query text) {
    return filtered(request, base(request, text));
  }

  /**
   * The same, with the arms of which it is not said whether they have the missing length asked for,
   * and with those that reach into it and give no centre, where the centre is asked for.
   */
  static Query narrowedOrNotSaid(SearchRequest request, Query text) {
    BooleanQuery.Builder query = besideLength(request, text);
    DefectQueries.orNotSaid(request).ifPresent(lengths -> query.add(lengths, Occur.FILTER));
    return filtered(request, query.build());
  }

  /**
   * Text, years and follow-up of arms that do not say whether they have a missing length: all but
   * the filters that have counts beside them.
   */
  static Query lengthNotSaid(SearchRequest request, LengthRange range, Query text) {
    return besideLength(request, text)
        .add(DefectQueries.oneEndOrUnknown(range), Occur.FILTER)
        .add(DefectQueries.reaching(range), Occur.MUST_NOT)
        .build();
  }

  private static Query filtered(SearchRequest request, Query all) {
    BooleanQuery.Builder query = new BooleanQuery.Builder();
    query.add(all, Occur.MUST);
    for (Filter filter : Filter.values()) {
      for (Set<String> codes : filter.byPart(filter.asked(request))) {
        query.add(anyOf(filter, codes), Occur.FILTER);
      }
    }
    return query.build();
  }

  private static Query anyOf(Filter filter, Set<String> codes) {
    return new TermInSetQuery(
        filter.field(), codes.stream().map(Filter::term).map(BytesRef::new).toList());
  }

  private static Query years(YearRange years) {
    return years.isBackwards()
        ? new MatchNoDocsQuery("the first year lies after the last")
        : IntPoint.newRangeQuery(
            ArmDocuments.YEAR,
            years.from().orElse(Integer.MIN_VALUE),
            years.to().orElse(Integer.MAX_VALUE));
  }
}
