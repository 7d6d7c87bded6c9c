package gapwise.reference.likeness;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Pattern;

/** A person's name as a record gives it, with its plain forms made ready to be compared. */
public final class PersonName {
  /** Small words before family names; the list is ours, from common practice. */
  private static final Set<String> PARTICLES =
      Set.of(
          "van", "von", "der", "den", "de", "del", "della", "di", "da", "dos", "das", "do", "du",
          "la", "le", "lo", "zu", "zur", "zum", "vom", "ter", "ten", "te", "het", "op", "af", "av",
          "al", "el", "bin", "ibn", "ben", "st", "san", "d", "y", "e");

  /** Parts that tell generations apart. */
  private static final Set<String> GENERATIONS =
      Set.of("jr", "sr", "junior", "senior", "ii", "iii", "iv", "2nd", "3rd");

  private static final Pattern WORDS_OF_GIVEN = Pattern.compile("[\\s.,]+");

  private final String family;
  private final String given;
  private final String core;
  private final String skeleton;
  private final String initials;
  private final String sounds;
  private final String givenCore;
  private final List<String> fullGiven;
  private final boolean inAnotherScript;

  /**
   * A name in its parts.
   *
   * @param family family name with what stands before it ("van den Berg")
   * @param given given names, in full or as initials; may be empty
   */
  public PersonName(String family, String given) {
    this.family = Objects.requireNonNull(family, "family");
    this.given = Objects.requireNonNull(given, "given");
    this.core = core(family);
    this.skeleton = Letters.skeleton(core);
    this.initials = initialsOf(given);
    this.sounds = sound(initials);
    this.givenCore = core(given);
    this.fullGiven = fullGivenOf(given);
    this.inAnotherScript = Letters.isInAnotherScript(family);
  }

  /** Family name with what stands before it. */
  public String family() {
    return family;
  }

  /** Given names, in full or as initials; may be empty. */
  public String given() {
    return given;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof PersonName name
        && name.family.equals(family)
        && name.given.equals(given);
  }

  @Override
  public int hashCode() {
    return 31 * family.hashCode() + given.hashCode();
  }

  @Override
  public String toString() {
    return given.isEmpty() ? family : family + ", " + given;
  }

  /** Reads a name of one line: "Family, Given", "Given Family" or "Family GI". */
  public static PersonName of(String line) {
    String text = line.strip();
    int comma = text.indexOf(',');
    if (comma >= 0) {
      return new PersonName(text.substring(0, comma).strip(), text.substring(comma + 1).strip());
    }
    String[] words = text.split("\\s+");
    int last = words.length - 1;
    if (last > 0 && areInitials(words[last])) {
      return new PersonName(String.join(" ", List.of(words).subList(0, last)), words[last]);
    }
    int start = last;
    while (start > 1 && isParticle(words[start - 1])) {
      start--;
    }
    List<String> all = List.of(words);
    return new PersonName(
        String.join(" ", all.subList(start, words.length)),
        String.join(" ", all.subList(0, start)));
  }

  /** The family name in plain letters, joined, without particles and generation. */
  public String core() {
    return core;
  }

  /** The same reduced to what its spellings have in common, see {@link Letters#skeleton}. */
  public String skeleton() {
    return skeleton;
  }

  /** Whether the letters of the name are of a script whose sound they do not tell. */
  boolean isInAnotherScript() {
    return inAnotherScript;
  }

  /** Initials of the given names in plain letters: "hoa" of "Hans-Otto A.". */
  String initials() {
    return initials;
  }

  private static String initialsOf(String given) {
    StringBuilder initials = new StringBuilder();
    for (String part : WORDS_OF_GIVEN.split(given.replace('-', ' '))) {
      String letters = Letters.joined(part);
      if (letters.isEmpty() || GENERATIONS.contains(letters) || isParticle(part)) {
        continue;
      }
      if (areInitials(part)) {
        initials.append(letters);
      } else {
        initials.append(letters.charAt(0));
      }
    }
    return initials.toString();
  }

  /** The initials, with first letters that romanisations exchange made one. */
  String sounds() {
    return sounds;
  }

  /** The given names in plain letters, joined. */
  String givenCore() {
    return givenCore;
  }

  static String sound(String initials) {
    return initials
        .replace('y', 'i')
        .replace('j', 'i')
        .replace('c', 'k')
        .replace('e', 'i')
        .replace('w', 'v');
  }

  /** Given names of more than an initial, in plain letters. */
  List<String> fullGiven() {
    return fullGiven;
  }

  private static List<String> fullGivenOf(String given) {
    List<String> full = new ArrayList<>();
    for (String part : WORDS_OF_GIVEN.split(given.replace('-', ' '))) {
      String letters = Letters.joined(part);
      if (letters.length() > 1
          && !areInitials(part)
          && !GENERATIONS.contains(letters)
          && !PARTICLES.contains(letters)) {
        full.add(letters);
      }
    }
    return List.copyOf(full);
  }

  /** A name without particles and generation, in plain letters. */
  static String core(String name) {
    StringBuilder core = new StringBuilder();
    for (String part : Letters.folded(name).split(" ")) {
      if (!PARTICLES.contains(part) && !GENERATIONS.contains(part)) {
        core.append(part);
      }
    }
    return core.isEmpty() ? Letters.joined(name) : core.toString();
  }

  private static boolean isParticle(String word) {
    return !word.isEmpty()
        && Character.isLowerCase(word.charAt(0))
        && PARTICLES.contains(Letters.joined(word));
  }

  /** One to four capitals, with points or without: "HO", "H.O.", "H.-O.". */
  private static boolean areInitials(String word) {
    String letters = word.replaceAll("[.\\-\\u2010\\u2011]", "");
    return !letters.isEmpty()
        && letters.length() <= 4
        && letters.codePoints().allMatch(Character::isUpperCase);
  }
}
