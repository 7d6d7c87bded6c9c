package gapwise.search;

import gapwise.evidence.unit.LengthRange;
import gapwise.search.SearchAnswer.ArmHit;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.apache.lucene.analysis.Analyzer;
import org.apache.lucene.index.Term;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.ScoreDoc;
import org.apache.lucene.search.TermQuery;

/** Answers requests on one state of the index. */
final class Finder {
  private final IndexSearcher searcher;
  private final HeldColumns columns;
  private final Analyzer analyzer;

  Finder(IndexSearcher searcher, HeldColumns columns, Analyzer analyzer) {
    this.searcher = searcher;
    this.columns = columns;
    this.analyzer = analyzer;
  }

  SearchAnswer answer(SearchRequest request, StudySearch.Order order, int offset, int limit)
      throws IOException {
    int last = (int) Math.min((long) offset + limit, searcher.getIndexReader().maxDoc());
    int first = limit == 0 ? 0 : last;
    return answer(request, Counting.inOrder(columns, request, HitOrder.of(order), first), offset);
  }

  /** Every arm found goes to the visitor, as the index knows it. */
  SearchAnswer eachArm(SearchRequest request, Consumer<IndexedArm> visitor) throws IOException {
    return answer(request, Counting.visited(columns, request, visitor), 0);
  }

  private SearchAnswer answer(SearchRequest request, Counting counting, int offset)
      throws IOException {
    FreeText text = FreeText.of(request.text(), analyzer);
    Counting.Totals totals = searcher.search(RequestQueries.base(request, text.all()), counting);
    boolean allWordsFound = totals.arms() > 0 || allFound(text);
    if (!allWordsFound) {
      totals = searcher.search(RequestQueries.base(request, text.any()), counting);
    }
    return new SearchAnswer(
        totals.arms(),
        totals.studies(),
        totals.patients(),
        hits(totals.first(), offset),
        totals.facets(),
        allWordsFound ? Optional.empty() : Optional.of(loose(text)),
        allWordsFound ? Optional.empty() : didYouMean(request));
  }

  /** Whether any arm has all the words, whatever else is asked. */
  private boolean allFound(FreeText text) throws IOException {
    return text.isEmpty() || searcher.count(text.all()) > 0;
  }

  /** Every arm found, in order of study and arm. */
  List<ArmHit> everyArm(SearchRequest request) throws IOException {
    return inOrder(RequestQueries.narrowed(request, words(request)));
  }

  /** The same, with those of which it is not said whether they have the length asked for. */
  List<ArmHit> everyArmOrNotSaid(SearchRequest request) throws IOException {
    return inOrder(RequestQueries.narrowedOrNotSaid(request, words(request)));
  }

  private List<ArmHit> inOrder(Query narrowed) throws IOException {
    int most = Math.max(1, searcher.getIndexReader().maxDoc());
    return hits(List.of(searcher.search(narrowed, most, HitOrder.BY_STUDY).scoreDocs), 0);
  }

  int count(SearchRequest request) throws IOException {
    return searcher.count(RequestQueries.narrowed(request, words(request)));
  }

  LengthNotSaid lengthNotSaid(SearchRequest request, SearchAnswer answer) throws IOException {
    Optional<LengthRange> range = request.lengthsOfPatients();
    if (range.isEmpty()) {
      return LengthNotSaid.NONE;
    }
    FreeText text = FreeText.of(request.text(), analyzer);
    return searcher.search(
        RequestQueries.lengthNotSaid(
            request, range.get(), answer.looseWords().isEmpty() ? text.all() : text.any()),
        new NotSaidCounting(columns, request));
  }

  Optional<String> spelling(SearchRequest request) throws IOException {
    FreeText text = FreeText.of(request.text(), analyzer);
    return allFound(text) ? Optional.empty() : didYouMean(request);
  }

  Optional<LooseWords> looseWords(String typed) throws IOException {
    FreeText text = FreeText.of(typed, analyzer);
    return allFound(text) ? Optional.empty() : Optional.of(loose(text));
  }

  private LooseWords loose(FreeText text) throws IOException {
    List<String> words = new ArrayList<>();
    List<String> nowhere = new ArrayList<>();
    for (FreeText.Part part : text.parts()) {
      words.add(part.typed());
      if (searcher.count(part.query()) == 0) {
        nowhere.add(part.typed());
      }
    }
    return new LooseWords(words, nowhere);
  }

  boolean holdsInvented() throws IOException {
    return searcher.count(new TermQuery(new Term(ArmDocuments.INVENTED, "yes"))) > 0;
  }

  private Query words(SearchRequest request) throws IOException {
    FreeText text = FreeText.of(request.text(), analyzer);
    return allFound(text) ? text.all() : text.any();
  }

  /** Another spelling, if it finds something among what the filters leave. */
  private Optional<String> didYouMean(SearchRequest request) throws IOException {
    Optional<String> better =
        new Spelling(analyzer).better(request.text(), searcher.getIndexReader());
    if (better.isEmpty()) {
      return better;
    }
    Query words = FreeText.of(better.get(), analyzer).all();
    return searcher.count(RequestQueries.narrowed(request, words)) > 0 ? better : Optional.empty();
  }

  private List<ArmHit> hits(List<ScoreDoc> found, int offset) throws IOException {
    return HitReader.read(searcher.getIndexReader(), found, offset);
  }
}
