package gapwise.evidence;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * The authors of a paper: one text for one cell, "Family, Given; Family, Given", which is kept
 * letter by letter, and the people it names. Names that a comma does not part are people too where
 * they end in initials, as in "Family AB"; all others are kept as they are printed.
 */
public final class Authors {
  /** Words of groups; a name that has one is no person's. */
  private static final Pattern GROUP =
      Pattern.compile(
          "\\b(groups?|collaborat\\w*|consortium|investigators?|committee|society|association"
              + "|organi[sz]ation|network|registry|council|institute|university|hospital"
              + "|department|division|ministry|cent(?:re|er)|foundation|trialists|panel|study)\\b",
          Pattern.CASE_INSENSITIVE);

  private static final Set<String> GENERATIONS =
      Set.of("jr", "sr", "ii", "iii", "iv", "2nd", "3rd", "4th");

  /** Letters that initials without points have at most; longer ones are a word in capitals. */
  private static final int MOST_INITIALS = 4;

  private final String text;
  private final List<AuthorName> names;

  private Authors(String text) {
    if (text.isBlank()) {
      throw new IllegalArgumentException("a list of authors needs a name");
    }
    this.text = text;
    List<AuthorName> all = new ArrayList<>();
    for (String name : text.split(";")) {
      if (!name.isBlank()) {
        all.add(name(name.strip()));
      }
    }
    this.names = List.copyOf(all);
  }

  /** Reads the text of a cell. */
  @JsonCreator
  public static Authors of(String text) {
    return new Authors(text);
  }

  /** Writes names into one text; empty where there is none. */
  public static Optional<Authors> ofNames(List<AuthorName> names) {
    String joined =
        names.stream()
            .map(name -> written(name).replace(';', ','))
            .collect(Collectors.joining("; "));
    return joined.isBlank() ? Optional.empty() : Optional.of(new Authors(joined));
  }

  /**
   * A family name alone gets a comma behind it, which tells it from a group; a group whose name
   * would be taken for a person's by its commas loses them.
   */
  private static String written(AuthorName name) {
    String line = name.line();
    if (name instanceof AuthorName.Person person) {
      return line.equals(person.family()) ? line + "," : line;
    }
    return name(line) instanceof AuthorName.Person ? line.replace(",", "") : line;
  }

  /** The name that one part of the list stands for. */
  static AuthorName name(String printed) {
    if (GROUP.matcher(printed).find()) {
      return new AuthorName.Literal(printed);
    }
    String[] parts = printed.split("\\s*,\\s*", -1);
    if (parts.length == 1) {
      return withoutComma(printed);
    }
    if (parts[0].isEmpty() || parts.length > 3) {
      return new AuthorName.Literal(printed);
    }
    if (parts.length == 2 && parts[1].isEmpty()) {
      return new AuthorName.Person(parts[0], "", "");
    }
    if (parts.length == 3) {
      // "Family, Jr, Given" is printed too.
      return isGeneration(parts[1]) && !isGeneration(parts[2])
          ? new AuthorName.Person(parts[0], parts[2], parts[1])
          : new AuthorName.Person(parts[0], parts[1], parts[2]);
    }
    return isGeneration(parts[1])
        ? new AuthorName.Person(parts[0], "", parts[1])
        : new AuthorName.Person(parts[0], parts[1], "");
  }

  private static AuthorName withoutComma(String printed) {
    List<String> words = List.of(printed.split("\\s+"));
    int last = words.size() - 1;
    String suffix = "";
    if (last > 1 && isGeneration(words.get(last))) {
      suffix = words.get(last);
      last--;
    }
    boolean initials = last > 0 && areInitials(words.get(last));
    String family = String.join(" ", words.subList(0, Math.max(last, 0)));
    return initials && family.codePoints().anyMatch(Character::isLowerCase)
        ? new AuthorName.Person(family, words.get(last), suffix)
        : new AuthorName.Literal(printed);
  }

  private static boolean isGeneration(String word) {
    return GENERATIONS.contains(word.replace(".", "").toLowerCase(Locale.ROOT));
  }

  private static boolean areInitials(String word) {
    String letters = word.replaceAll("[.\\-\u2010\u2011]", "");
    return !letters.isEmpty()
        && letters.length() <= MOST_INITIALS
        && letters.codePoints().allMatch(Character::isUpperCase);
  }

  /** The list as printed, for one cell. */
  @JsonValue
  public String text() {
    return text;
  }

  /** The people and groups in their order; empty only where the text has nothing but semicolons. */
  public List<AuthorName> names() {
    return names;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Authors authors && authors.text.equals(text);
  }

  @Override
  public int hashCode() {
    return text.hashCode();
  }

  @Override
  public String toString() {
    return text;
  }
}
