package gapwise.search.words;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads a request such as "union bone transport 5-8 cm infected distal tibia". The longest phrase
 * that means something is taken first; what stands in quotation marks is always text.
 */
public final class PlainWords {
  private static final int MOST_CHARACTERS = 4000;
  private static final Pattern QUOTED =
      Pattern.compile("[\"\u201c\u201d][^\"\u201c\u201d]*[\"\u201c\u201d]?");
  private static final Pattern WORD = Pattern.compile("[\\p{L}\\p{N}\\p{M}'\u2019.]+");

  private final StringBuilder text;
  private final List<Placed> placed = new ArrayList<>();
  private final List<String> aside = new ArrayList<>();

  private record Placed(Reading reading, int from) {}

  private record Word(int from, int to) {}

  private PlainWords(String typed) {
    text = new StringBuilder(typed);
  }

  /** Takes a request apart. Nothing that is typed is wrong. */
  public static Understood read(String typed) {
    PlainWords words =
        new PlainWords(typed.substring(0, Math.min(typed.length(), MOST_CHARACTERS)));
    List<String> quoted = words.hideQuoted();
    words.takeAmounts();
    words.takePhrases();
    return words.understood(quoted);
  }

  /** Puts a mark that no one types in place of each quotation. */
  private List<String> hideQuoted() {
    List<String> quoted = new ArrayList<>();
    Matcher quotation = QUOTED.matcher(text.toString());
    while (quotation.find()) {
      quoted.add(quotation.group());
      for (int i = quotation.start(); i < quotation.end(); i++) {
        text.setCharAt(i, i == quotation.start() ? '\u0001' : ' ');
      }
    }
    return quoted;
  }

  private void takeAmounts() {
    Optional<Amounts.Found> found = Amounts.firstIn(text.toString());
    while (found.isPresent()) {
      placed.add(new Placed(found.get().reading(), found.get().from()));
      blank(found.get().from(), found.get().to(), '\u0002');
      found = Amounts.firstIn(text.toString());
    }
  }

  private void takePhrases() {
    List<Word> words = new ArrayList<>();
    Matcher word = WORD.matcher(text.toString());
    while (word.find()) {
      words.add(new Word(word.start(), word.end()));
    }
    int at = 0;
    while (at < words.size()) {
      at += Math.max(1, takePhrase(words, at));
    }
  }

  /** Number of words taken, 0 if the word at a place begins nothing. */
  private int takePhrase(List<Word> words, int at) {
    for (int count = Math.min(Phrases.longest(), words.size() - at); count > 0; count--) {
      int from = words.get(at).from();
      int to = words.get(at + count - 1).to();
      String phrase = text.substring(from, to);
      Optional<Phrases.Meaning> meaning = Phrases.meaning(phrase);
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

  private void blank(int from, int to, char with) {
    for (int i = from; i < to; i++) {
      text.setCharAt(i, with);
    }
  }

  private Understood understood(List<String> quoted) {
    List<Reading> readings =
        placed.stream().sorted(Comparator.comparingInt(Placed::from)).map(Placed::reading).toList();
    String rest = text.toString().replace('\u0002', ' ');
    for (String one : quoted) {
      rest = rest.replaceFirst("\u0001", Matcher.quoteReplacement(" " + one + " "));
    }
    rest = rest.replaceAll("(?<=^|\\s)[,;:+&|()-]+(?=\\s|$)", " ").strip().replaceAll("\\s+", " ");
    return new Understood(readings, rest, aside);
  }
}
