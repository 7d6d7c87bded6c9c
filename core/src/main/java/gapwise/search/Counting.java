package gapwise.search;

import gapwise.search.SearchAnswer.Facet;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.NumericDocValues;
import org.apache.lucene.index.SortedDocValues;
import org.apache.lucene.search.CollectorManager;
import org.apache.lucene.search.LeafCollector;
import org.apache.lucene.search.Scorable;
import org.apache.lucene.search.ScoreDoc;
import org.apache.lucene.search.ScoreMode;
import org.apache.lucene.search.SimpleCollector;
import org.apache.lucene.search.Sort;
import org.apache.lucene.search.TopFieldCollector;
import org.apache.lucene.search.TopFieldCollectorManager;
import org.apache.lucene.search.TopFieldDocs;

/**
 * Counts, in one pass over the arms that match text, years and missing length: the arms, studies
 * and patients that pass every filter, and beside each filter the arms of each value, the other
 * filters as they are. An arm that fails exactly one filter counts beside that one alone; one that
 * fails two counts nowhere. The arms that pass every filter are put in order in the same pass.
 */
final class Counting implements CollectorManager<Counting.Pass, Counting.Totals> {
  private final SearchRequest request;
  private final TopFieldCollectorManager ordered;

  /**
   * @param first how many of the first arms are kept
   */
  Counting(SearchRequest request, Sort order, int first) {
    this.request = request;
    // A queue holds at least one; every arm is counted, so none may be skipped.
    this.ordered = new TopFieldCollectorManager(order, Math.max(1, first), Integer.MAX_VALUE);
  }

  /**
   * What was counted.
   *
   * @param first documents of the first arms, in order
   */
  record Totals(int arms, int studies, long patients, List<Facet> facets, List<ScoreDoc> first) {}

  @Override
  public Pass newCollector() {
    return new Pass(request, ordered.newCollector());
  }

  @Override
  public Totals reduce(Collection<Pass> passes) throws IOException {
    int arms = 0;
    int studies = 0;
    long patients = 0;
    for (Pass pass : passes) {
      arms += pass.arms;
      studies += pass.studies;
      patients += pass.patients;
    }
    TopFieldDocs first = ordered.reduce(passes.stream().map(pass -> pass.first).toList());
    return new Totals(arms, studies, patients, facets(passes, arms), List.of(first.scoreDocs));
  }

  private static List<Facet> facets(Collection<Pass> passes, int arms) throws IOException {
    Map<Filter, Map<String, Integer>> counted = new EnumMap<>(Filter.class);
    int[] without = new int[Filter.values().length];
    Arrays.fill(without, arms);
    for (Filter filter : Filter.values()) {
      counted.put(filter, new TreeMap<>());
    }
    for (Pass pass : passes) {
      for (FilterColumn column : pass.finished) {
        column.addTo(counted.get(column.filter()));
        without[column.filter().ordinal()] += column.failedAlone();
      }
    }
    List<Facet> facets = new ArrayList<>();
    counted.forEach(
        (filter, counts) ->
            facets.add(new Facet(filter.field(), mostFirst(counts), without[filter.ordinal()])));
    return facets;
  }

  private static List<SearchAnswer.Count> mostFirst(Map<String, Integer> counts) {
    return counts.entrySet().stream()
        .map(entry -> new SearchAnswer.Count(entry.getKey(), entry.getValue()))
        .sorted(Comparator.comparingInt(SearchAnswer.Count::arms).reversed())
        .toList();
  }

  /** One pass. The arms of a study stand side by side in one segment, whatever was merged. */
  static final class Pass extends SimpleCollector {
    private final SearchRequest request;
    private final TopFieldCollector first;
    private final List<FilterColumn> finished = new ArrayList<>();
    private LeafCollector firstOfSegment;
    private FilterColumn[] columns = {};
    private SortedDocValues studyOfArm;
    private NumericDocValues patientsOfArm;
    private int lastStudy;
    private int arms;
    private int studies;
    private long patients;

    private Pass(SearchRequest request, TopFieldCollector first) {
      this.request = request;
      this.first = first;
    }

    @Override
    protected void doSetNextReader(LeafReaderContext context) throws IOException {
      List<FilterColumn> ofSegment = new ArrayList<>();
      for (Filter filter : Filter.values()) {
        ofSegment.add(
            new FilterColumn(
                filter,
                DocValues.getSortedSet(context.reader(), filter.field()),
                filter.asked(request)));
      }
      columns = ofSegment.toArray(FilterColumn[]::new);
      finished.addAll(ofSegment);
      studyOfArm = DocValues.getSorted(context.reader(), ArmDocuments.STUDY);
      patientsOfArm = DocValues.getNumeric(context.reader(), ArmDocuments.PATIENTS);
      lastStudy = -1;
      firstOfSegment = first.getLeafCollector(context);
    }

    @Override
    public void setScorer(Scorable scorer) throws IOException {
      firstOfSegment.setScorer(scorer);
    }

    @Override
    public void collect(int document) throws IOException {
      FilterColumn failed = null;
      for (FilterColumn column : columns) {
        if (!column.load(document)) {
          if (failed != null) {
            return;
          }
          failed = column;
        }
      }
      if (failed != null) {
        failed.countFailedAlone();
        return;
      }
      for (FilterColumn column : columns) {
        column.count();
      }
      countArm(document);
      firstOfSegment.collect(document);
    }

    private void countArm(int document) throws IOException {
      arms++;
      if (studyOfArm.advanceExact(document) && studyOfArm.ordValue() != lastStudy) {
        lastStudy = studyOfArm.ordValue();
        studies++;
      }
      if (patientsOfArm.advanceExact(document)) {
        patients += patientsOfArm.longValue();
      }
    }

    @Override
    public ScoreMode scoreMode() {
      return first.scoreMode();
    }
  }
}
