package gapwise.figure.file;

import gapwise.figure.Reference;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** References in the form of BibTeX: an entry with its key and fields in braces, in UTF-8. */
final class Bibtex {
  /** What TeX takes for something else than itself, and how it is written. */
  private static final Map<Character, String> SIGNS =
      Map.of(
          '\\', "\\textbackslash{}",
          '{', "\\{",
          '}', "\\}",
          '$', "\\$",
          '&', "\\&",
          '#', "\\#",
          '_', "\\_",
          '%', "\\%",
          '~', "\\textasciitilde{}",
          '^', "\\textasciicircum{}");

  private final StringBuilder text = new StringBuilder();
  private final Set<String> keys = new HashSet<>();

  private Bibtex() {}

  static String of(List<Reference> references) {
    Bibtex written = new Bibtex();
    references.forEach(written::entry);
    return written.text.toString();
  }

  private void entry(Reference one) {
    text.append("@article{").append(key(one.key()));
    field("author", one.authors().stream().map(Bibtex::name).collect(Collectors.joining(" and ")));
    // In braces twice, so that no style changes the case of a title.
    field("title", one.title().isBlank() ? "" : "{" + escaped(one.title()) + "}");
    field("journal", escaped(one.journal()));
    field("year", one.year().isPresent() ? Integer.toString(one.year().getAsInt()) : "");
    field("volume", escaped(one.volume()));
    field("number", escaped(one.issue()));
    field("pages", escaped(one.pages().replaceAll("\\s*[-\u2013]\\s*", "--")));
    field("doi", escaped(one.doi()));
    field("pmid", escaped(one.pmid()));
    field("note", one.invented() ? escaped(References.INVENTED) : "");
    text.append("\n}\n\n");
  }

  /** Letters, digits and dashes, each key once. */
  private String key(String words) {
    String plain = words.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
    String key = plain;
    for (int number = 2; !keys.add(key); number++) {
      key = plain + "-" + number;
    }
    return key;
  }

  /** Family name, what stands after it, given names; a group in braces, so that it stays whole. */
  private static String name(Reference.Author author) {
    if (author.isGroup()) {
      return "{" + escaped(author.name()) + "}";
    }
    String suffix = author.suffix().isEmpty() ? "" : ", " + escaped(author.suffix());
    String given = author.given().isEmpty() ? "" : ", " + escaped(author.given());
    return escaped(author.name()) + suffix + given;
  }

  private void field(String name, String value) {
    if (!value.isBlank()) {
      text.append(",\n  ").append(name).append(" = {").append(value.strip()).append('}');
    }
  }

  private static String escaped(String words) {
    StringBuilder escaped = new StringBuilder();
    for (char sign : words.replaceAll("\\s+", " ").toCharArray()) {
      String written = SIGNS.get(sign);
      escaped.append(written == null ? String.valueOf(sign) : written);
    }
    return escaped.toString();
  }
}
