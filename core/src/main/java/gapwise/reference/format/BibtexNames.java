package gapwise.reference.format;

import gapwise.reference.Author;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** People and groups from the author field of BibTeX: names parted by "and", in both orders. */
final class BibtexNames {
  /**
   * Names as read.
   *
   * @param authors authors in their order
   * @param empty places between two "and" where nobody stands
   * @param shortened whether the list ends with "and others"
   */
  record Result(List<Author> authors, int empty, boolean shortened) {}

  private BibtexNames() {}

  static Result of(String field) {
    List<Author> authors = new ArrayList<>();
    int empty = 0;
    boolean shortened = false;
    for (String part : apart(field)) {
      String name = part.strip();
      if (name.isEmpty()) {
        empty++;
      } else if (name.equals("others")) {
        shortened = true;
      } else {
        one(name).ifPresent(authors::add);
      }
    }
    return new Result(List.copyOf(authors), empty, shortened);
  }

  /** Parts between "and" outside of braces. */
  private static List<String> apart(String field) {
    String text = " " + field.replaceAll("\\s+", " ") + " ";
    List<String> parts = new ArrayList<>();
    int depth = 0;
    int start = 0;
    int at = 0;
    while (at < text.length()) {
      char sign = text.charAt(at);
      if (sign == '\\') {
        at++;
      } else if (sign == '{') {
        depth++;
      } else if (sign == '}') {
        depth--;
      } else if (depth <= 0 && text.regionMatches(true, at, " and ", 0, 5)) {
        parts.add(text.substring(start, at));
        start = at + 4;
        at += 3;
      }
      at++;
    }
    parts.add(text.substring(start));
    return parts;
  }

  private static Optional<Author> one(String name) {
    if (isWhole(name)) {
      return Optional.of(Tex.plain(name)).filter(text -> !text.isEmpty()).map(Author.Group::new);
    }
    List<String> commas = byComma(name);
    if (commas.size() > 1) {
      List<String> plain = commas.stream().map(Tex::plain).toList();
      return Names.withComma(String.join(", ", plain));
    }
    String plain = Tex.plain(name);
    List<String> words = words(name);
    if (words.size() < 2) {
      return plain.isEmpty() ? Optional.empty() : Optional.of(Names.withoutComma(plain));
    }
    if (Names.isGroup(plain)) {
      return Optional.of(new Author.Group(plain));
    }
    return Optional.of(givenFirst(words));
  }

  /** "Anna van den Berg Jr": small words before the last one belong to the family name. */
  private static Author givenFirst(List<String> words) {
    int end = words.size();
    String suffix = "";
    if (end > 2 && Names.isGeneration(words.get(end - 1))) {
      suffix = words.get(end - 1);
      end--;
    }
    int start = end - 1;
    for (int at = 1; at < end - 1; at++) {
      if (Character.isLowerCase(words.get(at).codePointAt(0))) {
        start = at;
        break;
      }
    }
    return Names.person(
        String.join(" ", words.subList(start, end)),
        String.join(" ", words.subList(0, start)),
        suffix);
  }

  /** Whether one pair of braces holds all of a name, as it does for a group. */
  private static boolean isWhole(String name) {
    if (!name.startsWith("{")
        || !name.endsWith("}")
        || (name.startsWith("{\\") && name.length() < 8)) {
      return false;
    }
    int depth = 0;
    for (int at = 0; at < name.length() - 1; at++) {
      char sign = name.charAt(at);
      depth += sign == '{' ? 1 : sign == '}' ? -1 : 0;
      if (depth == 0) {
        return false;
      }
    }
    return true;
  }

  private static List<String> byComma(String name) {
    List<String> parts = new ArrayList<>();
    int depth = 0;
    int start = 0;
    for (int at = 0; at < name.length(); at++) {
      char sign = name.charAt(at);
      depth += sign == '{' ? 1 : sign == '}' ? -1 : 0;
      if (sign == ',' && depth <= 0) {
        parts.add(name.substring(start, at));
        start = at + 1;
      }
    }
    parts.add(name.substring(start));
    return parts;
  }

  /** Words outside of braces; a braced part is one word. */
  private static List<String> words(String name) {
    List<String> words = new ArrayList<>();
    int depth = 0;
    StringBuilder word = new StringBuilder();
    for (int at = 0; at < name.length(); at++) {
      char sign = name.charAt(at);
      depth += sign == '{' ? 1 : sign == '}' ? -1 : 0;
      if (depth <= 0 && Character.isWhitespace(sign)) {
        add(words, word);
      } else {
        word.append(sign);
      }
    }
    add(words, word);
    return words;
  }

  private static void add(List<String> words, StringBuilder word) {
    String plain = Tex.plain(word.toString());
    if (!plain.isEmpty()) {
      words.add(plain);
    }
    word.setLength(0);
  }
}
