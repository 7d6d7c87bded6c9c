package gapwise.search;

import java.util.Map;
import java.util.regex.Pattern;
import org.apache.lucene.analysis.Analyzer;
import org.apache.lucene.analysis.CharArraySet;
import org.apache.lucene.analysis.LowerCaseFilter;
import org.apache.lucene.analysis.StopFilter;
import org.apache.lucene.analysis.TokenStream;
import org.apache.lucene.analysis.Tokenizer;
import org.apache.lucene.analysis.en.EnglishAnalyzer;
import org.apache.lucene.analysis.en.EnglishPossessiveFilter;
import org.apache.lucene.analysis.en.PorterStemFilter;
import org.apache.lucene.analysis.miscellaneous.ASCIIFoldingFilter;
import org.apache.lucene.analysis.miscellaneous.PerFieldAnalyzerWrapper;
import org.apache.lucene.analysis.pattern.PatternReplaceFilter;
import org.apache.lucene.analysis.standard.StandardTokenizer;

/**
 * How text becomes words of the index: without case and accents, without English stop words, and
 * stemmed (Porter, Program 1980;14:130), with British and American endings as one. The field for
 * other spellings keeps whole words.
 */
final class Wording {
  /** Fields of text with the weight of a word found there; titles and names say most. */
  static final Map<String, Float> FIELDS =
      Map.of("title", 3f, "names", 3f, "method", 2f, "words", 1f);

  /** The field of unstemmed words. */
  static final String SPELLINGS = "spellings";

  /** "vascularised" and "vascularized", "stabilisation" and "stabilization" are one word. */
  private static final Pattern BRITISH_ENDING = Pattern.compile("(?<=\\w{3})is(e[ds]?|ing|ation)$");

  private Wording() {}

  static Analyzer analyzer() {
    return new PerFieldAnalyzerWrapper(new Stemmed(), Map.of(SPELLINGS, new Whole()));
  }

  private static final class Stemmed extends Analyzer {
    @Override
    protected TokenStreamComponents createComponents(String field) {
      Tokenizer tokens = new StandardTokenizer();
      TokenStream words = new ASCIIFoldingFilter(new LowerCaseFilter(tokens));
      words = new EnglishPossessiveFilter(words);
      words = new StopFilter(words, EnglishAnalyzer.getDefaultStopSet());
      words = new PatternReplaceFilter(words, BRITISH_ENDING, "iz$1", false);
      return new TokenStreamComponents(tokens, new PorterStemFilter(words));
    }
  }

  private static final class Whole extends Analyzer {
    private static final CharArraySet STOP_WORDS = EnglishAnalyzer.getDefaultStopSet();

    @Override
    protected TokenStreamComponents createComponents(String field) {
      Tokenizer tokens = new StandardTokenizer();
      TokenStream words = new ASCIIFoldingFilter(new LowerCaseFilter(tokens));
      return new TokenStreamComponents(tokens, new StopFilter(words, STOP_WORDS));
    }
  }
}
