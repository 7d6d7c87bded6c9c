package gapwise.search;

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
import org.apache.lucene.search.Sort;
import org.apache.lucene.search.SortField;
import org.apache.lucene.search.TermQuery;

/** Answers requests on one state of the index. */
final class Finder {
  private final IndexSearcher searcher;
  private final Analyzer analyzer;

  Finder(IndexSearcher searcher, Analyzer analyzer) {
    this.searcher = searcher;
    this.analyzer = analyzer;
  }

  SearchAnswer answer(SearchRequest request, StudySearch.Order order, int offset, int limit)
      throws IOException {
    FreeText text = FreeText.of(request.text(), analyzer);
    Query words = text.all();
    Counting.Totals totals = totals(request, words);
    boolean allWordsFound = totals.arms() > 0 || allFound(text);
    if (!allWordsFound) {
      words = text.any();
      totals = totals(request, words);
    }
    return new SearchAnswer(
        totals.arms(),
        totals.studies(),
        totals.patients(),
        hits(RequestQueries.narrowed(request, words), sort(order), offset, limit),
        totals.facets(),
        allWordsFound ? Optional.empty() : Optional.of(loose(text)),
        allWordsFound ? Optional.empty() : didYouMean(request));
  }

  private Counting.Totals totals(SearchRequest request, Query words) throws IOException {
    return searcher.search(RequestQueries.base(request, words), new Counting(request));
  }

  /** Whether any arm has all the words, whatever else is asked. */
  private boolean allFound(FreeText text) throws IOException {
    return text.isEmpty() || searcher.count(text.all()) > 0;
  }

  /** Every arm found, in order of study and arm. */
  List<ArmHit> everyArm(SearchRequest request) throws IOException {
    Query narrowed = RequestQueries.narrowed(request, words(request));
    return hits(narrowed, new Sort(tail()), 0, Integer.MAX_VALUE);
  }

  /** Every arm found, as the index knows it. */
  void eachArm(SearchRequest request, Consumer<IndexedArm> visitor) throws IOException {
    searcher.search(RequestQueries.narrowed(request, words(request)), new ArmVisit(visitor));
  }

  int count(SearchRequest request) throws IOException {
    return searcher.count(RequestQueries.narrowed(request, words(request)));
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

  private List<ArmHit> hits(Query query, Sort sort, int offset, int limit) throws IOException {
    int wanted = (int) Math.min((long) offset + limit, searcher.getIndexReader().maxDoc());
    if (limit == 0 || wanted <= offset) {
      return List.of();
    }
    ScoreDoc[] found = searcher.search(query, wanted, sort).scoreDocs;
    return HitReader.read(searcher.getIndexReader(), found, offset);
  }

  private static Sort sort(StudySearch.Order order) {
    SortField first =
        switch (order) {
          case RELEVANCE -> SortField.FIELD_SCORE;
          case YEAR_DESCENDING -> number(ArmDocuments.YEAR_ORDER, SortField.Type.LONG, true);
          case YEAR_ASCENDING -> number(ArmDocuments.YEAR_ORDER, SortField.Type.LONG, false);
          case DEFECT_ASCENDING ->
              number(ArmDocuments.DEFECT_CENTRE_ORDER, SortField.Type.DOUBLE, false);
          case DEFECT_DESCENDING ->
              number(ArmDocuments.DEFECT_CENTRE_ORDER, SortField.Type.DOUBLE, true);
          case PATIENTS_DESCENDING -> number(ArmDocuments.PATIENTS, SortField.Type.LONG, true);
          case TITLE -> new SortField(ArmDocuments.TITLE_ORDER, SortField.Type.STRING);
        };
    SortField[] tail = tail();
    return new Sort(first, tail[0], tail[1]);
  }

  /** What settles ties, so that the same records always come in the same order. */
  private static SortField[] tail() {
    return new SortField[] {
      new SortField(ArmDocuments.STUDY, SortField.Type.STRING),
      new SortField(ArmDocuments.ARM_POSITION, SortField.Type.LONG)
    };
  }

  /** Arms without the number come last in both directions. */
  private static SortField number(String field, SortField.Type type, boolean descending) {
    SortField sort = new SortField(field, type, descending);
    if (type == SortField.Type.DOUBLE) {
      sort.setMissingValue(descending ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY);
    } else {
      sort.setMissingValue(descending ? Long.MIN_VALUE : Long.MAX_VALUE);
    }
    return sort;
  }
}
