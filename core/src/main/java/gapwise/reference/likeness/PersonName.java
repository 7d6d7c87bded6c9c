package gapwise.reference.likeness;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;

/**
 * A person's name as a record gives it.
 *
 * @param family family name with what stands before it ("van den Berg")
 * @param given given names, in full or as initials; may be empty
 */
public record PersonName(String family, String given) {
  /** Small words before family names; the list is ours, from common practice. */
  private static final Set<String> PARTICLES =
      Set.of(
          "van", "von", "der", "den", "de", "del", "della", "di", "da", "dos", "das", "do", "du",
          "la", "le", "lo", "zu", "zur", "zum", "vom", "ter", "ten", "te", "het", "op", "af", "av",
          "al", "el", "bin", "ibn", "ben", "st", "san", "d", "y", "e");

  /** Parts that tell generations apart. */
  private static final Set<String> GENERATIONS =
      Set.of("jr", "sr", "junior", "senior", "ii", "iii", "iv", "2nd", "3rd");

  public PersonName {
    Objects.requireNonNull(family, "family");
    Objects.requireNonNull(given, "given");
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
    return core(family);
  }

  /** Whether the letters of the name are of a script whose sound they do not tell. */
  boolean isInAnotherScript() {
    return Letters.isInAnotherScript(family);
  }

  /** Initials of the given names in plain letters: "hoa" of "Hans-Otto A.". */
  String initials() {
    StringBuilder initials = new StringBuilder();
    for (String part : given.replace('-', ' ').split("[\\s.]+")) {
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

  /** Given names of more than an initial, in plain letters. */
  List<String> fullGiven() {
    List<String> full = new ArrayList<>();
    for (String part : given.replace('-', ' ').split("[\\s.,]+")) {
      String letters = Letters.joined(part);
      if (letters.length() > 1
          && !areInitials(part)
          && !GENERATIONS.contains(letters)
          && !PARTICLES.contains(letters)) {
        full.add(letters);
      }
    }
    return full;
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
