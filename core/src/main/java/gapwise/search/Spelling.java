package gapwise.search;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.apache.lucene.analysis.Analyzer;
import org.apache.lucene.index.IndexReader;
import org.apache.lucene.index.Term;
import org.apache.lucene.search.spell.DirectSpellChecker;
import org.apache.lucene.search.spell.SuggestMode;
import org.apache.lucene.search.spell.SuggestWord;

/** Offers another spelling for words that no record has, from the words that records have. */
final class Spelling {
  /** Longer than any word of the trade; the work of finding like words grows with the length. */
  private static final int LONGEST_WORD = 40;

  private final Analyzer analyzer;
  private final DirectSpellChecker checker = new DirectSpellChecker();

  Spelling(Analyzer analyzer) {
    this.analyzer = analyzer;
  }

  /** The text with its unknown words replaced; empty when none of them has a likely spelling. */
  Optional<String> better(String typed, IndexReader reader) throws IOException {
    String text = FreeText.readable(typed);
    StringBuilder better = new StringBuilder();
    int copied = 0;
    boolean changed = false;
    List<FreeText.Token> words = FreeText.tokens(analyzer, Wording.SPELLINGS, text);
    for (FreeText.Token token : words.subList(0, Math.min(words.size(), FreeText.MOST_WORDS))) {
      Optional<String> word = likely(token.word(), reader);
      if (word.isPresent()) {
        better.append(text, copied, token.from()).append(word.get());
        copied = token.to();
        changed = true;
      }
    }
    return changed
        ? Optional.of(better.append(text, copied, text.length()).toString())
        : Optional.empty();
  }

  /** The closest word; of equally close ones that which more arms have. */
  private Optional<String> likely(String word, IndexReader reader) throws IOException {
    if (word.length() > LONGEST_WORD) {
      return Optional.empty();
    }
    SuggestWord[] words =
        checker.suggestSimilar(
            new Term(Wording.SPELLINGS, word), 1, reader, SuggestMode.SUGGEST_WHEN_NOT_IN_INDEX);
    return words.length == 0 ? Optional.empty() : Optional.of(words[0].string);
  }
}
