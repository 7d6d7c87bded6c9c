package gapwise.search;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.lucene.analysis.Analyzer;
import org.apache.lucene.analysis.TokenStream;
import org.apache.lucene.analysis.tokenattributes.CharTermAttribute;
import org.apache.lucene.analysis.tokenattributes.OffsetAttribute;
import org.apache.lucene.search.BooleanClause.Occur;
import org.apache.lucene.search.BooleanQuery;
import org.apache.lucene.search.BoostQuery;
import org.apache.lucene.search.DisjunctionMaxQuery;
import org.apache.lucene.search.MatchAllDocsQuery;
import org.apache.lucene.search.Query;
import org.apache.lucene.util.QueryBuilder;

/**
 * What a person types, as words and phrases. There is no syntax but quotation marks around a
 * phrase, so nothing that is typed can be wrong; a mark without its partner is ignored.
 */
final class FreeText {
  /**
   * Words beyond these are not looked for: more than anyone types, fewer than the 1024 clauses that
   * a query of the index may have, each word being looked for in each field.
   */
  static final int MOST_WORDS = 64;

  private static final int MOST_CHARACTERS = 4000;
  private static final Pattern PART =
      Pattern.compile(
          "[\"\u201c\u201d]([^\"\u201c\u201d]+)[\"\u201c\u201d]|([^\\s\"\u201c\u201d]+)");

  private final QueryBuilder builder;
  private final List<Part> parts;

  /** A word or phrase as typed, and what looks for it. */
  record Part(String typed, Query query) {}

  private FreeText(QueryBuilder builder, List<Part> parts) {
    this.builder = builder;
    this.parts = List.copyOf(parts);
  }

  static FreeText of(String text, Analyzer analyzer) {
    FreeText empty = new FreeText(new QueryBuilder(analyzer), List.of());
    List<Part> parts = new ArrayList<>();
    int words = 0;
    Matcher part = PART.matcher(readable(text));
    while (part.find()) {
      boolean phrase = part.group(1) != null;
      String typed = phrase ? part.group(1) : part.group(2);
      int held = tokens(analyzer, "words", typed).size();
      words += held;
      if (held > 0 && words <= MOST_WORDS) {
        parts.add(new Part(typed, empty.anywhere(typed, phrase)));
      }
    }
    return new FreeText(empty.builder, parts);
  }

  /** As much of a text as is read. */
  static String readable(String text) {
    return text.substring(0, Math.min(text.length(), MOST_CHARACTERS));
  }

  /** A part found in any field; several fields do not add up. */
  private Query anywhere(String typed, boolean phrase) {
    List<Query> fields = new ArrayList<>();
    for (Map.Entry<String, Float> field : Wording.FIELDS.entrySet()) {
      Query query =
          phrase
              ? builder.createPhraseQuery(field.getKey(), typed)
              : builder.createBooleanQuery(field.getKey(), typed, Occur.MUST);
      fields.add(new BoostQuery(query, field.getValue()));
    }
    return new DisjunctionMaxQuery(fields, 0);
  }

  /** True when nothing is left to look for: blank, marks only, or words that every text has. */
  boolean isEmpty() {
    return parts.isEmpty();
  }

  /** What is looked for, in the order typed. */
  List<Part> parts() {
    return parts;
  }

  /** Every part is found. */
  Query all() {
    return together(Occur.MUST);
  }

  /** At least one part is found. */
  Query any() {
    return together(Occur.SHOULD);
  }

  private Query together(Occur occur) {
    if (parts.isEmpty()) {
      return new MatchAllDocsQuery();
    }
    BooleanQuery.Builder query = new BooleanQuery.Builder();
    parts.forEach(part -> query.add(part.query(), occur));
    return query.build();
  }

  /** The words that an analyzer makes of a text, with where they stand in it. */
  static List<Token> tokens(Analyzer analyzer, String field, String text) {
    List<Token> tokens = new ArrayList<>();
    try (TokenStream stream = analyzer.tokenStream(field, text)) {
      var term = stream.addAttribute(CharTermAttribute.class);
      var offset = stream.addAttribute(OffsetAttribute.class);
      stream.reset();
      while (stream.incrementToken()) {
        tokens.add(new Token(term.toString(), offset.startOffset(), offset.endOffset()));
      }
      stream.end();
      return tokens;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A word and the place in the text that it was read from. */
  record Token(String word, int from, int to) {}
}
