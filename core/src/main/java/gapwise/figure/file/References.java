package gapwise.figure.file;

import static gapwise.sentence.Sentences.say;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.figure.Figure;
import gapwise.figure.FigureProvenance;
import gapwise.figure.Reference;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The studies that a figure shows, as lists that people and reference programs read.
 *
 * @param list in the order of the figure
 */
public record References(List<Reference> list) {
  private static final JsonMapper JSON = JsonMapper.builder().build();
  private static final Pattern PAGES = Pattern.compile("\\s*(\\S+?)\\s*[-\u2013]\\s*(\\S+)\\s*");

  /** Said of a record of an invented study. */
  static final String INVENTED = say("figure.invented-paper");

  public References {
    list = List.copyOf(list);
  }

  /** One citation a line, numbered in the order of the figure. */
  String text(Figure figure) {
    StringBuilder text = new StringBuilder();
    String source = String.join(". ", figure.source());
    text.append(say("figure.studies-shown", Map.of("figure", figure.title(), "source", source)));
    text.append('\n');
    if (figure.provenance().demonstration()) {
      text.append(FigureProvenance.INVENTED).append('\n');
    }
    text.append('\n');
    return text.append(lines()).toString();
  }

  /**
   * The list in the tagged format RIS: two letters, two spaces, a dash, a space, the value; one
   * record from TY to ER.
   */
  public String ris() {
    List<String> lines = new ArrayList<>();
    for (Reference each : list) {
      lines.add("TY  - JOUR");
      add(lines, "ID", each.key());
      each.authors().forEach(author -> add(lines, "AU", ris(author)));
      add(lines, "TI", each.title());
      add(lines, "T2", each.journal());
      each.year().ifPresent(year -> add(lines, "PY", Integer.toString(year)));
      add(lines, "VL", each.volume());
      add(lines, "IS", each.issue());
      Matcher pages = PAGES.matcher(each.pages());
      add(lines, "SP", pages.matches() ? pages.group(1) : each.pages());
      add(lines, "EP", pages.matches() ? pages.group(2) : "");
      add(lines, "DO", each.doi());
      add(lines, "AN", each.pmid());
      add(lines, "N1", each.invented() ? INVENTED : "");
      lines.add("ER  - ");
      lines.add("");
    }
    return String.join("\r\n", lines);
  }

  private static void add(List<String> lines, String tag, String value) {
    if (!value.isBlank()) {
      lines.add(tag + "  - " + value.replaceAll("\\s+", " ").strip());
    }
  }

  /** The list as BibTeX. */
  public String bibtex() {
    return Bibtex.of(list);
  }

  /** One citation a line, numbered. */
  public String lines() {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < list.size(); i++) {
      text.append(i + 1).append(". ").append(list.get(i).line()).append('\n');
    }
    return text.toString();
  }

  /** The list as CSL-JSON (the data schema of the Citation Style Language, 1.0). */
  public String cslJson() {
    ArrayNode array = JSON.createArrayNode();
    for (Reference each : list) {
      ObjectNode item = array.addObject();
      item.put("id", each.key()).put("type", "article-journal").put("title", each.title());
      if (!each.authors().isEmpty()) {
        ArrayNode authors = item.putArray("author");
        each.authors().forEach(author -> name(authors.addObject(), author));
      }
      each.year()
          .ifPresent(year -> item.putObject("issued").putArray("date-parts").addArray().add(year));
      put(item, "container-title", each.journal());
      put(item, "volume", each.volume());
      put(item, "issue", each.issue());
      put(item, "page", each.pages());
      put(item, "DOI", each.doi());
      put(item, "PMID", each.pmid());
      put(item, "note", each.invented() ? INVENTED : "");
    }
    try {
      return JSON.writerWithDefaultPrettyPrinter().writeValueAsString(array) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a list of texts can always be written", e);
    }
  }

  /**
   * The family name, a comma, the given names, and after another comma what stands after them. A
   * family name of several words keeps its comma where it stands alone; a group has none.
   */
  private static String ris(Reference.Author author) {
    if (author.isGroup()) {
      return author.name().replace(",", "");
    }
    String given = author.given().isEmpty() ? "" : ", " + author.given();
    if (!author.suffix().isEmpty()) {
      return author.name() + (given.isEmpty() ? ", " : given) + ", " + author.suffix();
    }
    return given.isEmpty() && author.name().contains(" ")
        ? author.name() + ","
        : author.name() + given;
  }

  /** A person by family and given name; a group by the name as it is printed. */
  private static void name(ObjectNode name, Reference.Author author) {
    name.put(author.isGroup() ? "literal" : "family", author.name());
    put(name, "given", author.given());
    put(name, "suffix", author.suffix());
  }

  private static void put(ObjectNode item, String field, String value) {
    if (!value.isBlank()) {
      item.put(field, value);
    }
  }
}
