package gapwise.search.words;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads a request such as "union bone transport 5-8 cm infected distal tibia". The longest phrase
 * that means something is taken first; what stands in quotation marks is always text.
 */
public final class PlainWords {
  /**
   * Letters that a request may have; an abstract has some 2,000 (common practice of journals, no
   * source), and who pastes more wants something else.
   */
  public static final int MOST_LETTERS = 2000;

  /** Blanks of any number, and characters that nobody types. */
  private static final Pattern BLANKS = Pattern.compile("[\\s\\p{Cntrl}]+");

  /**
   * An amount that was read uncovers at most one before it ("follow-up 12 months and 5 cm"), so
   * that two goes find all that people write; more are made for what nobody writes.
   */
  private static final int MOST_GOES = 4;

  private static final char QUOTATION = '\u0001';
  private static final char AMOUNT = '\u0002';

  private static final Pattern QUOTED =
      Pattern.compile("[\"\u201c\u201d][^\"\u201c\u201d]*[\"\u201c\u201d]?");

  private final StringBuilder text;
  private final List<Placed> placed = new ArrayList<>();
  private final List<String> aside = new ArrayList<>();

  private record Placed(Reading reading, int from) {}

  /**
   * A word and its place.
   *
   * @param meant itself, or the word that it most likely is where it is mistyped
   */
  private record Word(int from, int to, String meant) {}

  private PlainWords(String typed) {
    text = new StringBuilder(typed);
  }

  /**
   * Takes a request apart. Nothing that is typed is wrong; who takes typed words in refuses those
   * of more than {@link #MOST_LETTERS} letters. The work grows with the length of the text.
   */
  public static Understood read(String typed) {
    List<String> quoted = new ArrayList<>();
    PlainWords words = new PlainWords(hideQuoted(BLANKS.matcher(typed).replaceAll(" "), quoted));
    words.takeAmounts();
    words.takePhrases();
    return words.understood(quoted);
  }

  /** Puts a mark that no one types in place of each quotation. */
  private static String hideQuoted(String typed, List<String> quoted) {
    return QUOTED
        .matcher(typed)
        .replaceAll(
            quotation -> {
              quoted.add(quotation.group());
              return String.valueOf(QUOTATION);
            });
  }

  private void takeAmounts() {
    List<Amounts.Found> amounts = Amounts.in(text.toString());
    for (int go = 1; go <= MOST_GOES && !amounts.isEmpty(); go++) {
      for (Amounts.Found amount : amounts) {
        placed.add(new Placed(amount.reading(), amount.from()));
        blank(amount.from(), amount.to(), AMOUNT);
      }
      amounts = Amounts.in(text.toString());
    }
  }

  private void takePhrases() {
    List<Word> words = new ArrayList<>();
    Matcher word = Phrases.WORD.matcher(text.toString());
    while (word.find()) {
      words.add(
          new Word(word.start(), word.end(), Phrases.mended(word.group()).orElse(word.group())));
    }
    int at = 0;
    while (at < words.size()) {
      at += Math.max(1, takePhrase(words, at));
    }
  }

  /** Number of words taken, 0 if the word at a place begins nothing. */
  private int takePhrase(List<Word> words, int at) {
    int from = words.get(at).from();
    int most = Phrases.longestFrom(words.get(at).meant());
    for (int count = Math.min(most, words.size() - at); count > 0; count--) {
      int to = words.get(at + count - 1).to();
      String phrase = text.substring(from, to);
      Optional<Phrases.Meaning> meaning = Phrases.meaning(meant(words.subList(at, at + count)));
      if (meaning.isPresent()) {
        Phrases.Meaning meant = meaning.get();
        placed.add(new Placed(new Reading.Coded(meant.kind(), meant.codes(), phrase), from));
        blank(from, to, ' ');
        return count;
      }
    }
    Word word = words.get(at);
    String alone = text.substring(word.from(), word.to());
    if (Phrases.isAside(alone)) {
      aside.add(alone);
      blank(word.from(), word.to(), ' ');
    }
    return 0;
  }

  /** Words as they are meant, with what stands between them. */
  private String meant(List<Word> words) {
    StringBuilder phrase = new StringBuilder();
    int end = words.get(0).from();
    for (Word word : words) {
      phrase.append(text, end, word.from()).append(word.meant());
      end = word.to();
    }
    return phrase.toString();
  }

  private void blank(int from, int to, char with) {
    for (int i = from; i < to; i++) {
      text.setCharAt(i, with);
    }
  }

  private Understood understood(List<String> quoted) {
    List<Reading> readings =
        placed.stream().sorted(Comparator.comparingInt(Placed::from)).map(Placed::reading).toList();
    String rest = text.toString().replace(AMOUNT, ' ');
    Iterator<String> next = quoted.iterator();
    rest =
        Pattern.compile(String.valueOf(QUOTATION))
            .matcher(rest)
            .replaceAll(mark -> Matcher.quoteReplacement(" " + next.next() + " "));
    rest = rest.replaceAll("(?<=^|\\s)[,;:+&|()-]+(?=\\s|$)", " ").strip().replaceAll("\\s+", " ");
    return new Understood(readings, rest, aside);
  }
}
