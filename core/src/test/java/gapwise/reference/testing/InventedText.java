package gapwise.reference.testing;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;

/** Invented papers written in the four formats, by hand, so that writers of ours are not asked. */
final class InventedText {
  private static final ObjectMapper JSON = new ObjectMapper();

  private InventedText() {}

  static String of(int file, List<InventedPaper> papers) {
    StringBuilder text = new StringBuilder();
    ArrayNode items = JSON.createArrayNode();
    for (int at = 0; at < papers.size(); at++) {
      InventedPaper paper = papers.get(at);
      String id = InventedSearches.id(file, at);
      switch (file) {
        case 0 -> ris(text, id, paper);
        case 1 -> medline(text, paper);
        case 2 -> bibtex(text, id, paper);
        default -> items.add(csl(id, paper));
      }
    }
    return file == 3 ? items.toPrettyString() : text.toString();
  }

  private static String journal(InventedPaper paper) {
    return paper.place().split("\\|")[0];
  }

  private static String brief(InventedPaper paper) {
    return paper.place().split("\\|")[1];
  }

  private static void line(StringBuilder text, String tag, String value) {
    if (!value.isEmpty()) {
      text.append(tag).append(value).append("\n");
    }
  }

  private static void ris(StringBuilder text, String id, InventedPaper paper) {
    line(text, "TY  - ", paper.kind());
    line(text, "ID  - ", id);
    for (int at = 0; at < paper.families().size(); at++) {
      line(text, "AU  - ", paper.families().get(at) + ", " + paper.givens().get(at));
    }
    line(text, "TI  - ", paper.title());
    line(text, "JO  - ", journal(paper));
    line(text, "PY  - ", paper.year() + "///");
    line(text, "VL  - ", paper.numbers().get(0));
    line(text, "IS  - ", paper.numbers().get(1));
    line(text, "SP  - ", paper.numbers().get(2));
    line(text, "EP  - ", paper.numbers().get(3));
    line(text, "DO  - ", paper.doi());
    line(text, "AN  - ", paper.pmid().isEmpty() ? "" : "PMID: " + paper.pmid());
    text.append("ER  - \n");
  }

  private static void medline(StringBuilder text, InventedPaper paper) {
    line(
        text,
        "PMID- ",
        "" + (paper.number() > 0 ? 90_000_000 + paper.number() : 80_000_000 - paper.number()));
    line(text, "VI  - ", paper.numbers().get(0));
    line(text, "IP  - ", paper.numbers().get(1));
    line(text, "DP  - ", paper.year() + " Mar");
    line(text, "TI  - ", paper.title() + ".");
    line(text, "PG  - ", pages(paper, "-"));
    line(text, "LID - ", paper.doi().isEmpty() ? "" : paper.doi() + " [doi]");
    for (int at = 0; at < paper.families().size(); at++) {
      line(text, "FAU - ", paper.families().get(at) + ", " + paper.givens().get(at));
    }
    line(
        text,
        "PT  - ",
        paper.kind().equals("ABST")
            ? "Congress"
            : paper.kind().equals("UNPB") ? "Preprint" : "Journal Article");
    line(text, "TA  - ", brief(paper));
    line(text, "SO  - ", brief(paper) + ". " + paper.year());
    text.append("\n");
  }

  private static String pages(InventedPaper paper, String dash) {
    String last = paper.numbers().get(3);
    return paper.numbers().get(2) + (last.isEmpty() ? "" : dash + last);
  }

  private static void bibtex(StringBuilder text, String id, InventedPaper paper) {
    String kind =
        paper.kind().equals("ABST")
            ? "inproceedings"
            : paper.kind().equals("UNPB") ? "unpublished" : "article";
    text.append("@")
        .append(kind)
        .append("{")
        .append(id)
        .append(",\n  title = {")
        .append(paper.title())
        .append("},\n");
    StringBuilder authors = new StringBuilder();
    for (int at = 0; at < paper.families().size(); at++) {
      authors
          .append(at == 0 ? "" : " and ")
          .append(paper.givens().get(at))
          .append(" ")
          .append(paper.families().get(at));
    }
    field(text, "author", authors.toString());
    field(text, "journal", journal(paper).replace("&", "\\&").replace("\u00fc", "{\\\"u}"));
    field(text, "year", "" + paper.year());
    field(text, "volume", paper.numbers().get(0));
    field(text, "number", paper.numbers().get(1));
    field(text, "pages", pages(paper, "--"));
    field(text, "doi", paper.doi().isEmpty() ? "" : "https://doi.org/" + paper.doi());
    field(text, "pmid", paper.pmid());
    text.append("}\n\n");
  }

  private static void field(StringBuilder text, String name, String value) {
    if (!value.isEmpty()) {
      text.append("  ").append(name).append(" = {").append(value).append("},\n");
    }
  }

  private static ObjectNode csl(String id, InventedPaper paper) {
    ObjectNode item = JSON.createObjectNode();
    item.put("id", id);
    item.put("type", paper.kind().equals("ABST") ? "paper-conference" : "article-journal");
    if (paper.kind().equals("UNPB")) {
      item.put("genre", "Preprint");
    }
    item.put("title", paper.title());
    ArrayNode authors = item.putArray("author");
    for (int at = 0; at < paper.families().size(); at++) {
      authors
          .addObject()
          .put("family", paper.families().get(at))
          .put("given", paper.givens().get(at));
    }
    item.putObject("issued").putArray("date-parts").addArray().add(paper.year());
    item.put("container-title-short", brief(paper));
    item.put("volume", paper.numbers().get(0));
    item.put("page", pages(paper, "-"));
    item.put("DOI", paper.doi().toUpperCase(java.util.Locale.ROOT));
    item.put("PMID", paper.pmid());
    return item;
  }
}
