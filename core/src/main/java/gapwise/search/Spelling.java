package gapwise.search;

import java.io.IOException;
import java.util.Optional;
import org.apache.lucene.analysis.Analyzer;
import org.apache.lucene.index.IndexReader;
import org.apache.lucene.index.Term;
import org.apache.lucene.search.spell.DirectSpellChecker;
import org.apache.lucene.search.spell.SuggestMode;
import org.apache.lucene.search.spell.SuggestWord;
import org.apache.lucene.search.spell.SuggestWordQueue;

/** Offers another spelling for words that no record has, from the words that records have. */
final class Spelling {
  private final Analyzer analyzer;
  private final DirectSpellChecker checker = new DirectSpellChecker();

  Spelling(Analyzer analyzer) {
    this.analyzer = analyzer;
    // Ties in closeness go to the word that more arms have.
    checker.setComparator(SuggestWordQueue.DEFAULT_COMPARATOR);
  }

  /** The text with its unknown words replaced; empty when none of them has a likely spelling. */
  Optional<String> better(String text, IndexReader reader) throws IOException {
    StringBuilder better = new StringBuilder();
    int copied = 0;
    boolean changed = false;
    for (FreeText.Token token : FreeText.tokens(analyzer, Wording.SPELLINGS, text)) {
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

  private Optional<String> likely(String word, IndexReader reader) throws IOException {
    SuggestWord[] words =
        checker.suggestSimilar(
            new Term(Wording.SPELLINGS, word), 1, reader, SuggestMode.SUGGEST_WHEN_NOT_IN_INDEX);
    return words.length == 0 ? Optional.empty() : Optional.of(words[0].string);
  }
}
