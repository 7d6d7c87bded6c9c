package gapwise.search;

import gapwise.evidence.unit.LengthRange;
import gapwise.search.SearchAnswer.Facet;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Consumer;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.search.CollectorManager;
import org.apache.lucene.search.LeafCollector;
import org.apache.lucene.search.Scorable;
import org.apache.lucene.search.ScoreDoc;
import org.apache.lucene.search.ScoreMode;
import org.apache.lucene.search.SimpleCollector;
import org.apache.lucene.search.Sort;
import org.apache.lucene.search.TopFieldCollector;
import org.apache.lucene.search.TopFieldCollectorManager;

/**
 * Counts, in one pass over the arms that match text, years and missing length: the arms, studies
 * and patients that pass every filter, and beside each filter the arms and studies of each value,
 * the other filters as they are. An arm that fails exactly one filter counts beside that one alone;
 * one that fails two counts nowhere. The arms that pass every filter are put in order, or handed to
 * a visitor, in the same pass.
 */
final class Counting implements CollectorManager<Counting.Pass, Counting.Totals> {
  private final HeldColumns columns;
  private final SearchRequest request;
  private final Optional<LengthRange> lengths;
  private final Optional<TopFieldCollectorManager> ordered;
  private final Optional<Consumer<IndexedArm>> visitor;

  private Counting(
      HeldColumns columns,
      SearchRequest request,
      Optional<TopFieldCollectorManager> ordered,
      Optional<Consumer<IndexedArm>> visitor) {
    this.columns = columns;
    this.request = request;
    this.lengths = request.lengthsOfPatients();
    this.ordered = ordered;
    this.visitor = visitor;
  }

  /**
   * Counts and puts in order.
   *
   * @param first how many of the first arms are kept, 0 or more
   */
  static Counting inOrder(HeldColumns columns, SearchRequest request, Sort order, int first) {
    // Every arm is counted, so none may be skipped.
    return new Counting(
        columns,
        request,
        first == 0
            ? Optional.empty()
            : Optional.of(new TopFieldCollectorManager(order, first, Integer.MAX_VALUE)),
        Optional.empty());
  }

  /** Counts, and hands every arm that passes all filters to a visitor. */
  static Counting visited(
      HeldColumns columns, SearchRequest request, Consumer<IndexedArm> visitor) {
    return new Counting(columns, request, Optional.empty(), Optional.of(visitor));
  }

  /**
   * What was counted.
   *
   * @param first documents of the first arms, in order
   */
  record Totals(int arms, int studies, long patients, List<Facet> facets, List<ScoreDoc> first) {}

  @Override
  public Pass newCollector() {
    return new Pass(this, ordered.map(TopFieldCollectorManager::newCollector));
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
    return new Totals(arms, studies, patients, facets(passes, arms), first(passes));
  }

  private List<ScoreDoc> first(Collection<Pass> passes) throws IOException {
    if (ordered.isEmpty()) {
      return List.of();
    }
    List<TopFieldCollector> of = passes.stream().flatMap(pass -> pass.first.stream()).toList();
    return List.of(ordered.get().reduce(of).scoreDocs);
  }

  private static List<Facet> facets(Collection<Pass> passes, int arms) {
    Map<Filter, Map<String, SearchAnswer.Count>> counted = new EnumMap<>(Filter.class);
    int[] without = new int[Filter.values().length];
    Arrays.fill(without, arms);
    for (Filter filter : Filter.values()) {
      counted.put(filter, new TreeMap<>());
    }
    for (Pass pass : passes) {
      for (FilterColumn column : pass.finished) {
        column.addTo(counted.computeIfAbsent(column.filter(), filter -> new TreeMap<>()));
        without[column.filter().ordinal()] += column.failedAlone();
      }
    }
    List<Facet> facets = new ArrayList<>();
    counted.forEach(
        (filter, counts) ->
            facets.add(new Facet(filter.field(), mostFirst(counts), without[filter.ordinal()])));
    return facets;
  }

  private static List<SearchAnswer.Count> mostFirst(Map<String, SearchAnswer.Count> counts) {
    return counts.values().stream()
        .sorted(Comparator.comparingInt(SearchAnswer.Count::arms).reversed())
        .toList();
  }

  /** One pass. The arms of a study stand side by side in one segment, whatever was merged. */
  static final class Pass extends SimpleCollector {
    private final Counting counting;
    private final Optional<TopFieldCollector> first;
    private final List<FilterColumn> finished = new ArrayList<>();
    private Optional<LeafCollector> firstOfSegment = Optional.empty();
    private FilterColumn[] narrowing = {};
    private FilterColumn[] others = {};
    private Optional<SegmentColumns> ofSegment = Optional.empty();
    private int lastStudy = -1;
    private int arms;
    private int studies;
    private long patients;

    private Pass(Counting counting, Optional<TopFieldCollector> first) {
      this.counting = counting;
      this.first = first;
    }

    @Override
    protected void doSetNextReader(LeafReaderContext context) throws IOException {
      SegmentColumns held = counting.columns.of(context.reader());
      List<FilterColumn> narrow = new ArrayList<>();
      List<FilterColumn> beside = new ArrayList<>();
      for (Filter filter : Filter.values()) {
        Set<String> asked = filter.asked(counting.request);
        FilterColumn column = new FilterColumn(filter, held.of(filter), asked);
        (asked.isEmpty() ? beside : narrow).add(column);
        finished.add(column);
      }
      narrowing = narrow.toArray(FilterColumn[]::new);
      others = beside.toArray(FilterColumn[]::new);
      ofSegment = Optional.of(held);
      lastStudy = -1;
      if (first.isPresent()) {
        firstOfSegment = Optional.of(first.get().getLeafCollector(context));
      }
    }

    @Override
    public void setScorer(Scorable scorer) throws IOException {
      if (firstOfSegment.isPresent()) {
        firstOfSegment.get().setScorer(scorer);
      }
    }

    @Override
    public void collect(int document) throws IOException {
      SegmentColumns held = ofSegment.orElseThrow();
      int failed = -1;
      // Those that narrow are looked at first: most arms are decided by them alone.
      for (int i = 0; i < narrowing.length; i++) {
        narrowing[i].load(document);
        int parts = narrowing[i].failedParts();
        if (parts > 0) {
          if (failed >= 0 || parts > 1) {
            return;
          }
          failed = i;
        }
      }
      int study = held.study(document);
      if (failed >= 0) {
        narrowing[failed].countFailedAlone(study);
        return;
      }
      for (FilterColumn column : others) {
        column.load(document);
        column.count(study);
      }
      for (FilterColumn column : narrowing) {
        column.count(study);
      }
      OptionalInt meant = held.patients(document, counting.lengths);
      arms++;
      studies += study == lastStudy ? 0 : 1;
      lastStudy = study;
      patients += meant.orElse(0);
      if (firstOfSegment.isPresent()) {
        firstOfSegment.get().collect(document);
      }
      if (counting.visitor.isPresent()) {
        counting.visitor.get().accept(held.arm(document, meant));
      }
    }

    @Override
    public ScoreMode scoreMode() {
      return first.map(TopFieldCollector::scoreMode).orElse(ScoreMode.COMPLETE_NO_SCORES);
    }
  }
}
