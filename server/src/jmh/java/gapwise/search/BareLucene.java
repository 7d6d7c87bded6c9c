package gapwise.search;

import gapwise.search.SearchAnswer.ArmHit;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.lucene.analysis.Analyzer;
import org.apache.lucene.index.DirectoryReader;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.NumericDocValues;
import org.apache.lucene.index.ReaderUtil;
import org.apache.lucene.index.SortedDocValues;
import org.apache.lucene.index.SortedSetDocValues;
import org.apache.lucene.index.Term;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.ScoreDoc;
import org.apache.lucene.search.ScoreMode;
import org.apache.lucene.search.SimpleCollector;
import org.apache.lucene.search.Sort;
import org.apache.lucene.search.SortField;
import org.apache.lucene.search.spell.DirectSpellChecker;
import org.apache.lucene.search.spell.SuggestMode;
import org.apache.lucene.search.spell.SuggestWord;
import org.apache.lucene.store.FSDirectory;
import org.apache.lucene.util.BytesRef;
import org.apache.lucene.util.FixedBitSet;

/**
 * The same searches written straight on Lucene, on the same index, without records, wording, pages
 * or a network: what the server is held against.
 */
public final class BareLucene implements AutoCloseable {
  private final Analyzer analyzer = Wording.analyzer();
  private final DirectoryReader reader;
  private final IndexSearcher searcher;

  private BareLucene(DirectoryReader reader) {
    this.reader = reader;
    this.searcher = new IndexSearcher(reader);
  }

  /** Reads the index as it was last written to disk. */
  public static BareLucene open(Path index) throws IOException {
    return new BareLucene(DirectoryReader.open(FSDirectory.open(index)));
  }

  /** Number of arms in the index. */
  public int arms() {
    return reader.numDocs();
  }

  /** The first arms found, in order, and how many arms each value of each filter would leave. */
  public record Found(List<ArmHit> hits, Map<String, Integer> counts) {}

  /** One page of hits, newest first or best fit first, with the counts beside the filters. */
  public Found page(SearchRequest request, int hits) throws IOException {
    Query words = words(request);
    SortField first =
        request.text().isEmpty()
            ? new SortField(ArmDocuments.YEAR_ORDER, SortField.Type.LONG, true)
            : SortField.FIELD_SCORE;
    Sort sort =
        new Sort(
            first,
            new SortField(ArmDocuments.STUDY, SortField.Type.STRING),
            new SortField(ArmDocuments.ARM_POSITION, SortField.Type.LONG));
    List<ArmHit> found = new ArrayList<>();
    for (ScoreDoc hit :
        searcher.search(RequestQueries.narrowed(request, words), hits, sort).scoreDocs) {
      found.add(new ArmHit(text(ArmDocuments.STUDY, hit.doc), text(ArmDocuments.ARM, hit.doc)));
    }
    return new Found(found, counts(request, words));
  }

  /** What typing asks: the number of arms found, and where no arm has all words, like words. */
  public Found typed(SearchRequest request) throws IOException {
    Query words = words(request);
    FreeText text = FreeText.of(request.text(), analyzer);
    Map<String, Integer> counts = new TreeMap<>();
    counts.put("", searcher.count(RequestQueries.narrowed(request, words)));
    if (!text.isEmpty() && searcher.count(text.all()) == 0) {
      for (FreeText.Token token : FreeText.tokens(analyzer, Wording.SPELLINGS, request.text())) {
        for (SuggestWord like :
            new DirectSpellChecker()
                .suggestSimilar(
                    new Term(Wording.SPELLINGS, token.word()),
                    1,
                    reader,
                    SuggestMode.SUGGEST_WHEN_NOT_IN_INDEX)) {
          counts.put(like.string, like.freq);
        }
      }
    }
    return new Found(List.of(), counts);
  }

  /**
   * What the map counts: arms of each method by each whole centimetre of mean or median length, and
   * the counts beside the filters.
   */
  public Found map(SearchRequest request) throws IOException {
    Map<String, int[]> grid = new TreeMap<>();
    Query words = words(request);
    searcher.search(RequestQueries.narrowed(request, words), new Grid(grid));
    Map<String, Integer> counts = counts(request, words);
    grid.forEach(
        (method, lengths) -> {
          for (int length = 0; length < lengths.length; length++) {
            counts.put(method + " " + length, lengths[length]);
          }
        });
    return new Found(List.of(), counts);
  }

  private Query words(SearchRequest request) throws IOException {
    FreeText text = FreeText.of(request.text(), analyzer);
    return text.isEmpty() || searcher.count(text.all()) > 0 ? text.all() : text.any();
  }

  private String text(String field, int document) throws IOException {
    LeafReaderContext leaf = reader.leaves().get(ReaderUtil.subIndex(document, reader.leaves()));
    SortedDocValues values = DocValues.getSorted(leaf.reader(), field);
    values.advanceExact(document - leaf.docBase);
    return values.lookupOrd(values.ordValue()).utf8ToString();
  }

  private Map<String, Integer> counts(SearchRequest request, Query words) throws IOException {
    Facets facets = new Facets(request);
    searcher.search(RequestQueries.base(request, words), facets);
    facets.finishSegment();
    return facets.counts;
  }

  /** One pass for all filters: an arm that fails one filter counts beside that filter alone. */
  private static final class Facets extends SimpleCollector {
    private static final Filter[] FILTERS = Filter.values();
    private final SearchRequest request;
    private final Map<String, Integer> counts = new TreeMap<>();
    private final SortedSetDocValues[] values = new SortedSetDocValues[FILTERS.length];
    private final FixedBitSet[] asked = new FixedBitSet[FILTERS.length];
    private final int[][] arms = new int[FILTERS.length][0];
    private final int[][] held = new int[FILTERS.length][64];
    private final int[] holds = new int[FILTERS.length];

    Facets(SearchRequest request) {
      this.request = request;
    }

    @Override
    protected void doSetNextReader(LeafReaderContext context) throws IOException {
      finishSegment();
      for (int i = 0; i < FILTERS.length; i++) {
        values[i] = DocValues.getSortedSet(context.reader(), FILTERS[i].field());
        arms[i] = new int[(int) values[i].getValueCount()];
        asked[i] = null;
        if (!FILTERS[i].asked(request).isEmpty()) {
          asked[i] = new FixedBitSet(arms[i].length + 1);
          for (String code : FILTERS[i].asked(request)) {
            long place = values[i].lookupTerm(new BytesRef(code));
            if (place >= 0) {
              asked[i].set((int) place);
            }
          }
        }
      }
    }

    @Override
    public void collect(int document) throws IOException {
      int failed = -1;
      for (int i = 0; i < FILTERS.length; i++) {
        boolean passes = asked[i] == null;
        holds[i] = 0;
        if (values[i].advanceExact(document)) {
          int count = values[i].docValueCount();
          for (int j = 0; j < count; j++) {
            int place = (int) values[i].nextOrd();
            held[i][holds[i]++] = place;
            passes |= asked[i] != null && asked[i].get(place);
          }
        }
        if (!passes) {
          if (failed >= 0) {
            return;
          }
          failed = i;
        }
      }
      for (int i = 0; i < FILTERS.length; i++) {
        if (failed < 0 || failed == i) {
          for (int j = 0; j < holds[i]; j++) {
            arms[i][held[i][j]]++;
          }
        }
      }
    }

    void finishSegment() throws IOException {
      for (int i = 0; i < FILTERS.length; i++) {
        for (int place = 0; place < arms[i].length; place++) {
          if (arms[i][place] > 0) {
            String value = values[i].lookupOrd(place).utf8ToString();
            counts.merge(FILTERS[i].field() + " " + value, arms[i][place], Integer::sum);
          }
        }
        Arrays.fill(arms[i], 0);
      }
    }

    @Override
    public ScoreMode scoreMode() {
      return ScoreMode.COMPLETE_NO_SCORES;
    }
  }

  private static final class Grid extends SimpleCollector {
    private static final int LONGEST_CENTIMETRES = 40;
    private final Map<String, int[]> grid;
    private SortedSetDocValues methods;
    private NumericDocValues centres;
    private final List<int[]> ofMethod = new ArrayList<>();

    Grid(Map<String, int[]> grid) {
      this.grid = grid;
    }

    @Override
    protected void doSetNextReader(LeafReaderContext context) throws IOException {
      methods = DocValues.getSortedSet(context.reader(), Filter.METHODS.field());
      centres = DocValues.getNumeric(context.reader(), ArmDocuments.DEFECT_CENTRE_ORDER);
      ofMethod.clear();
      for (int place = 0; place < methods.getValueCount(); place++) {
        String code = methods.lookupOrd(place).utf8ToString();
        ofMethod.add(grid.computeIfAbsent(code, key -> new int[LONGEST_CENTIMETRES + 1]));
      }
    }

    @Override
    public void collect(int document) throws IOException {
      if (methods.advanceExact(document) && centres.advanceExact(document)) {
        double length = Double.longBitsToDouble(centres.longValue());
        int place = (int) Math.min(LONGEST_CENTIMETRES, Math.max(0, length));
        ofMethod.get((int) methods.nextOrd())[place]++;
      }
    }

    @Override
    public ScoreMode scoreMode() {
      return ScoreMode.COMPLETE_NO_SCORES;
    }
  }

  @Override
  public void close() throws IOException {
    reader.close();
    reader.directory().close();
  }
}
