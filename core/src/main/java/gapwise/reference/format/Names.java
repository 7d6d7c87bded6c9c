package gapwise.reference.format;

import gapwise.reference.Author;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** Names of people and groups from one line of a file. */
final class Names {
  private static final Set<String> GENERATIONS =
      Set.of("jr", "sr", "ii", "iii", "iv", "2nd", "3rd", "4th");

  /** Words of groups and institutions; a name without a comma that has one is no person's. */
  private static final Pattern GROUP =
      Pattern.compile(
          "\\b(groups?|collaborat\\w*|consortium|investigators?|committee|society|association|organi[sz]ation|"
              + "network|registry|register|team|council|institute|university|hospital|department|ministry|centre|center|foundation|trialists|panel|task"
              + " force|working party|study)\\b",
          Pattern.CASE_INSENSITIVE);

  private Names() {}

  /** "Family, Given, Jr" or "Family, Jr, Given"; a line without a comma is a group or one name. */
  static Optional<Author> withComma(String line) {
    String text = line.strip().replaceAll("[,;\\s]+$", "");
    if (text.isEmpty()) {
      return Optional.empty();
    }
    if (isFamilyAlone(text, line.strip())) {
      return Optional.of(person(text, "", ""));
    }
    String[] parts = text.split("\\s*,\\s*");
    if (parts.length == 1) {
      return Optional.of(withoutComma(text));
    }
    if (parts[0].isEmpty()) {
      return Optional.of(new Author.Group(text));
    }
    if (GROUP.matcher(text).find() && (parts.length > 3 || GROUP.matcher(parts[0]).find())) {
      return Optional.of(new Author.Group(text));
    }
    if (parts.length == 2 && isGeneration(parts[1])) {
      return Optional.of(person(parts[0], "", parts[1]));
    }
    if (parts.length >= 3 && isGeneration(parts[1])) {
      return Optional.of(person(parts[0], parts[2], parts[1]));
    }
    String suffix =
        parts.length >= 3 ? String.join(", ", List.of(parts).subList(2, parts.length)) : "";
    return Optional.of(person(parts[0], parts[1], suffix));
  }

  /** "van den Berg,": the comma that parts family and given name, and no given name. */
  private static boolean isFamilyAlone(String text, String line) {
    return line.endsWith(",")
        && !text.contains(",")
        && !GROUP.matcher(text).find()
        && !areInitials(text.substring(text.lastIndexOf(' ') + 1));
  }

  /** "van den Berg HO Jr": the family name, initials, what stands after the name. */
  static Optional<Author> medline(String line) {
    String text = line.strip();
    if (text.isEmpty()) {
      return Optional.empty();
    }
    if (text.contains(",")) {
      return withComma(text);
    }
    String[] words = text.split("\\s+");
    int last = words.length - 1;
    String suffix = "";
    if (last > 0 && isGeneration(words[last])) {
      suffix = words[last];
      last--;
    }
    if (last > 0 && areInitials(words[last])) {
      return Optional.of(person(joined(words, 0, last), words[last], suffix));
    }
    return Optional.of(last == 0 ? person(words[0], "", suffix) : new Author.Group(text));
  }

  /** A name whose parts no comma tells apart. */
  static Author withoutComma(String text) {
    String[] words = text.split("\\s+");
    if (words.length == 1 && !GROUP.matcher(text).find()) {
      return person(text, "", "");
    }
    if (words.length <= 4 && areInitials(words[words.length - 1]) && !GROUP.matcher(text).find()) {
      return person(joined(words, 0, words.length - 1), words[words.length - 1], "");
    }
    return new Author.Group(text);
  }

  static boolean isGroup(String text) {
    return GROUP.matcher(text).find();
  }

  static boolean isGeneration(String word) {
    return GENERATIONS.contains(word.replace(".", "").toLowerCase(Locale.ROOT));
  }

  /** A person; small words before the family name, or behind the given ones, are its particle. */
  static Author person(String family, String given, String suffix) {
    String[] words = family.strip().split("\\s+");
    int start = 0;
    while (start < words.length - 1 && isSmall(words[start])) {
      start++;
    }
    String particle = joined(words, 0, start);
    String[] givenWords = given.strip().split("\\s+");
    int end = givenWords.length;
    while (particle.isEmpty() && end > 1 && isSmall(givenWords[end - 1])) {
      end--;
    }
    if (particle.isEmpty()) {
      particle = joined(givenWords, end, givenWords.length);
    } else {
      end = givenWords.length;
    }
    String name = joined(words, start, words.length);
    return name.isBlank()
        ? new Author.Group((family + " " + given).strip())
        : new Author.Person(particle, name, joined(givenWords, 0, end), suffix.strip());
  }

  private static boolean isSmall(String word) {
    return !word.isEmpty()
        && word.codePoints()
            .allMatch(
                letter ->
                    Character.isLowerCase(letter)
                        || letter == '\''
                        || letter == '\u2019'
                        || letter == '.')
        && word.codePoints().anyMatch(Character::isLowerCase);
  }

  private static boolean areInitials(String word) {
    String letters = word.replaceAll("[.\\-]", "");
    return !letters.isEmpty()
        && letters.length() <= 4
        && letters.codePoints().allMatch(Character::isUpperCase);
  }

  private static String joined(String[] words, int from, int to) {
    return String.join(" ", List.of(words).subList(from, Math.max(from, to)));
  }
}
