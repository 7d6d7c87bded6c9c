package gapwise.search;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.search.CollectorManager;
import org.apache.lucene.search.ScoreMode;
import org.apache.lucene.search.SimpleCollector;

/**
 * Counts the arms that stand apart from a search by length, in one pass over those that match all
 * but the filters and do not say whether they have the length.
 */
final class NotSaidCounting implements CollectorManager<NotSaidCounting.Pass, LengthNotSaid> {
  private final HeldColumns columns;
  private final SearchRequest request;

  NotSaidCounting(HeldColumns columns, SearchRequest request) {
    this.columns = columns;
    this.request = request;
  }

  @Override
  public Pass newCollector() {
    return new Pass(columns, request);
  }

  @Override
  public LengthNotSaid reduce(Collection<Pass> passes) {
    int oneEnd = 0;
    int unknown = 0;
    for (Pass pass : passes) {
      oneEnd += pass.oneEnd;
      unknown += pass.unknown;
    }
    return new LengthNotSaid(oneEnd, unknown);
  }

  /** One pass. */
  static final class Pass extends SimpleCollector {
    private final HeldColumns columns;
    private final SearchRequest request;
    private List<FilterColumn> narrowing = List.of();
    private Optional<SegmentColumns> ofSegment = Optional.empty();
    private int oneEnd;
    private int unknown;

    private Pass(HeldColumns columns, SearchRequest request) {
      this.columns = columns;
      this.request = request;
    }

    @Override
    protected void doSetNextReader(LeafReaderContext context) throws IOException {
      SegmentColumns held = columns.of(context.reader());
      List<FilterColumn> narrow = new ArrayList<>();
      for (Filter filter : Filter.values()) {
        Set<String> asked = filter.asked(request);
        if (!asked.isEmpty()) {
          narrow.add(new FilterColumn(filter, held.of(filter), asked));
        }
      }
      narrowing = narrow;
      ofSegment = Optional.of(held);
    }

    @Override
    public void collect(int document) {
      for (FilterColumn column : narrowing) {
        column.load(document);
        if (column.failedParts() > 0) {
          return;
        }
      }
      if (ofSegment.orElseThrow().isLengthUnknown(document)) {
        unknown++;
      } else {
        oneEnd++;
      }
    }

    @Override
    public ScoreMode scoreMode() {
      return ScoreMode.COMPLETE_NO_SCORES;
    }
  }
}
