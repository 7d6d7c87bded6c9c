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
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;
import org.apache.lucene.index.DocValues;
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
  private final SearchRequest request;
  private final Optional<TopFieldCollectorManager> ordered;
  private final Optional<Consumer<IndexedArm>> visitor;

  private Counting(
      SearchRequest request,
      Optional<TopFieldCollectorManager> ordered,
      Optional<Consumer<IndexedArm>> visitor) {
    this.request = request;
    this.ordered = ordered;
    this.visitor = visitor;
  }

  /**
   * Counts and puts in order.
   *
   * @param first how many of the first arms are kept, 0 or more
   */
  static Counting inOrder(SearchRequest request, Sort order, int first) {
    // Every arm is counted, so none may be skipped.
    return new Counting(
        request,
        first == 0
            ? Optional.empty()
            : Optional.of(new TopFieldCollectorManager(order, first, Integer.MAX_VALUE)),
        Optional.empty());
  }

  /** Counts, and hands every arm that passes all filters to a visitor. */
  static Counting visited(SearchRequest request, Consumer<IndexedArm> visitor) {
    return new Counting(request, Optional.empty(), Optional.of(visitor));
  }

  /**
   * What was counted.
   *
   * @param first documents of the first arms, in order
   */
  record Totals(int arms, int studies, long patients, List<Facet> facets, List<ScoreDoc> first) {}

  @Override
  public Pass newCollector() {
    return new Pass(request, ordered.map(TopFieldCollectorManager::newCollector), visitor);
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

  private static List<Facet> facets(Collection<Pass> passes, int arms) throws IOException {
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
    private final SearchRequest request;
    private final Optional<TopFieldCollector> first;
    private final Optional<Consumer<IndexedArm>> visitor;
    private final List<FilterColumn> finished = new ArrayList<>();
    private Optional<LeafCollector> firstOfSegment = Optional.empty();
    private FilterColumn[] narrowing = {};
    private FilterColumn[] others = {};
    private Optional<ArmColumns> ofSegment = Optional.empty();
    private int arms;
    private int studies;
    private long patients;

    private Pass(
        SearchRequest request,
        Optional<TopFieldCollector> first,
        Optional<Consumer<IndexedArm>> visitor) {
      this.request = request;
      this.first = first;
      this.visitor = visitor;
    }

    @Override
    protected void doSetNextReader(LeafReaderContext context) throws IOException {
      List<FilterColumn> columns = new ArrayList<>();
      for (Filter filter : Filter.values()) {
        columns.add(
            new FilterColumn(
                filter,
                DocValues.getSortedSet(context.reader(), filter.field()),
                filter.asked(request)));
      }
      // Those that narrow are read first: most arms are decided by them alone.
      narrowing = columns.stream().filter(FilterColumn::narrows).toArray(FilterColumn[]::new);
      others = columns.stream().filter(c -> !c.narrows()).toArray(FilterColumn[]::new);
      finished.addAll(columns);
      ofSegment = Optional.of(new ArmColumns(context, columns, request.lengthsOfPatients()));
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
      int failed = -1;
      for (int i = 0; i < narrowing.length; i++) {
        int parts = narrowing[i].load(document);
        if (parts > 0) {
          if (failed >= 0 || parts > 1) {
            return;
          }
          failed = i;
        }
      }
      if (failed >= 0) {
        narrowing[failed].countFailedAlone(ofSegment.orElseThrow().study(document));
        return;
      }
      int study = ofSegment.orElseThrow().study(document);
      for (FilterColumn column : others) {
        column.load(document);
        column.count(study);
      }
      for (FilterColumn column : narrowing) {
        column.count(study);
      }
      countArm(document);
      if (firstOfSegment.isPresent()) {
        firstOfSegment.get().collect(document);
      }
      if (visitor.isPresent()) {
        visitor.get().accept(ofSegment.orElseThrow().arm(document));
      }
    }

    private void countArm(int document) throws IOException {
      ArmColumns columns = ofSegment.orElseThrow();
      columns.load(document);
      arms++;
      studies += columns.startsStudy() ? 1 : 0;
      patients += columns.patients().orElse(0);
    }

    @Override
    public ScoreMode scoreMode() {
      return first.map(TopFieldCollector::scoreMode).orElse(ScoreMode.COMPLETE_NO_SCORES);
    }
  }
}
