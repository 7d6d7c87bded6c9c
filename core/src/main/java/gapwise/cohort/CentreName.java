package gapwise.cohort;

import gapwise.reference.likeness.EditDistance;
import gapwise.reference.likeness.Letters;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * The name of a hospital taken apart, so that its spellings meet: order of words, marks on letters,
 * abbreviations and languages of the words that say of which kind it is, the town behind a comma.
 *
 * @param printed as the paper has it
 * @param kinds of which kind it is, such as university and hospital
 * @param name the words that are its own
 * @param town words after the name, without the country
 * @param words all words of its own and of its town
 */
record CentreName(
    String printed, Set<String> kinds, Set<String> name, Set<String> town, Set<String> words) {
  private static final String NOTHING = "nothing";
  private static final String DEPARTMENT = "department";
  private static final String SAINT = "saint";
  private static final Set<String> SAYS_NO_KIND = Set.of(NOTHING, SAINT, DEPARTMENT);
  private static final Map<String, List<String>> MEANINGS = meanings();

  /** How two names lie to each other. */
  enum Relation {
    SAME,
    /** One may be a shorter or another spelling of the other. */
    LIKE,
    /** Two hospitals of one town. */
    TOWN,
    DIFFERENT
  }

  CentreName {
    kinds = Set.copyOf(kinds);
    name = Set.copyOf(name);
    town = Set.copyOf(town);
    words = Set.copyOf(words);
  }

  private CentreName(String printed, Set<String> kinds, Set<String> name, Set<String> town) {
    this(printed, kinds, name, town, both(name, town));
  }

  private static Set<String> both(Set<String> name, Set<String> town) {
    Set<String> all = new HashSet<>(name);
    all.addAll(town);
    return all;
  }

  /**
   * @param country the country of the study, whose words say nothing of the hospital
   */
  static CentreName of(String printed, String country) {
    Set<String> abroad = new HashSet<>(words(country));
    Set<String> kinds = new TreeSet<>();
    Set<String> name = new TreeSet<>();
    Set<String> town = new TreeSet<>();
    boolean named = false;
    for (String part : printed.replaceAll("\\([^)]*\\)", " ").split("[,;]")) {
      List<String> words = words(part);
      if (isDepartment(words) || abroad.containsAll(words)) {
        continue;
      }
      boolean institution = words.stream().anyMatch(CentreName::saysKind);
      Set<String> own = named && !institution ? town : name;
      for (String word : words) {
        List<String> meaning = MEANINGS.getOrDefault(word, List.of());
        if (meaning.isEmpty()) {
          own.add(word);
        } else if (meaning.contains(SAINT)) {
          own.add(SAINT);
        } else if (saysKind(word)) {
          kinds.addAll(meaning);
        }
      }
      named |= institution;
    }
    return new CentreName(printed.strip(), kinds, name, town);
  }

  private static boolean isDepartment(List<String> words) {
    boolean department =
        words.stream().anyMatch(w -> MEANINGS.getOrDefault(w, List.of()).contains(DEPARTMENT));
    boolean house =
        words.stream()
            .flatMap(w -> MEANINGS.getOrDefault(w, List.of()).stream())
            .anyMatch(Set.of("hospital", "clinic", "centre", "institute")::contains);
    return department && !house;
  }

  private static boolean saysKind(String word) {
    List<String> meaning = MEANINGS.getOrDefault(word, List.of());
    return !meaning.isEmpty() && meaning.stream().noneMatch(SAYS_NO_KIND::contains);
  }

  /** Whether it says which hospital it is; "University Hospital" alone does not. */
  boolean isNamed() {
    return !words.isEmpty();
  }

  Relation to(CentreName other) {
    boolean kindsFit = kinds.containsAll(other.kinds) || other.kinds.containsAll(kinds);
    if (words.equals(other.words)) {
      return kinds.equals(other.kinds) ? Relation.SAME : kindsFit ? Relation.LIKE : Relation.TOWN;
    }
    boolean townsApart = !town.isEmpty() && !other.town.isEmpty() && !nearlyAmong(town, other.town);
    if (townsApart) {
      return Relation.DIFFERENT;
    }
    if (nearlyEqual(words, other.words)) {
      return kindsFit ? Relation.LIKE : Relation.TOWN;
    }
    boolean oneLeavesTownOut =
        kinds.equals(other.kinds)
            && (town.isEmpty() != other.town.isEmpty())
            && !name.isEmpty()
            && nearlyEqual(name, other.name);
    boolean oneNameLonger =
        kinds.equals(other.kinds)
            && town.isEmpty()
            && other.town.isEmpty()
            && (nearlyAmong(name, other.name) || nearlyAmong(other.name, name));
    if (oneLeavesTownOut || oneNameLonger || initials(this, other) || initials(other, this)) {
      return Relation.LIKE;
    }
    return words.stream().anyMatch(other.words::contains) ? Relation.TOWN : Relation.DIFFERENT;
  }

  /** Whether one is written by the first letters of the words of the other, such as "UHX". */
  private static boolean initials(CentreName shorter, CentreName longer) {
    String letters = shorter.printed.split("[,;]", 2)[0].replace(".", "").strip();
    if (!letters.matches("\\p{Lu}{3,6}")) {
      return false;
    }
    StringBuilder first = new StringBuilder();
    for (String word : longer.printed.split("[,;]", 2)[0].strip().split("[\\s-]+")) {
      if (!word.isEmpty() && Character.isUpperCase(word.charAt(0))) {
        first.append(word.charAt(0));
      }
    }
    return letters.contentEquals(first);
  }

  /** Whether two words of six letters or more differ by one slip at most. */
  private static boolean nearlyEqual(String a, String b) {
    return a.equals(b)
        || Math.min(a.length(), b.length()) >= 6 && EditDistance.between(a, b, 1) <= 1;
  }

  /**
   * The words of a text, without the s of a possessive; a letter with a mark is one letter even
   * where it is written as two.
   */
  static List<String> words(String text) {
    return Arrays.stream(Letters.folded(text.replaceAll("['\u2019]s\\b", "")).split(" "))
        .filter(word -> !word.isEmpty())
        .map(CentreName::folded)
        .toList();
  }

  private static String folded(String word) {
    return Letters.folded(word).replaceAll("(?<=[aou])e|(?<=a)a", "");
  }

  private static boolean nearlyEqual(Collection<String> a, Collection<String> b) {
    return a.size() == b.size() && nearlyAmong(a, b) && nearlyAmong(b, a);
  }

  private static boolean nearlyAmong(Collection<String> some, Collection<String> all) {
    return !some.isEmpty()
        && some.stream().allMatch(w -> all.stream().anyMatch(o -> nearlyEqual(w, o)));
  }

  private static Map<String, List<String>> meanings() {
    Properties lines = new Properties();
    try (InputStream bytes =
            Objects.requireNonNull(
                CentreName.class.getResourceAsStream("hospital-words.properties"),
                "hospital-words.properties");
        InputStreamReader text = new InputStreamReader(bytes, StandardCharsets.UTF_8)) {
      lines.load(text);
    } catch (IOException e) {
      throw new UncheckedIOException("the words of hospitals cannot be read", e);
    }
    Map<String, List<String>> meanings = new HashMap<>();
    for (String meaning : new TreeSet<>(lines.stringPropertyNames())) {
      List<String> means = Arrays.asList(meaning.split("[+]"));
      for (String word : lines.getProperty(meaning, "").strip().split("\\s+")) {
        meanings.merge(
            folded(word), means, (a, b) -> Stream.concat(a.stream(), b.stream()).toList());
      }
    }
    return meanings;
  }
}
