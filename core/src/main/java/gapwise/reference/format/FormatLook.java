package gapwise.reference.format;

import gapwise.problem.Problem;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The format of a text from its first lines, whatever its file is named. */
final class FormatLook {
  static final String EXPECTED =
      "Expected are RIS, MEDLINE text (the form with tags), BibTeX or CSL-JSON; export the search"
          + " again in one of these.";

  private static final Pattern RIS_START =
      Pattern.compile(
          "^[ \\t]*TY[ \\t]{0,3}[-\u2013][ \\t]?\\S", Pattern.MULTILINE | Pattern.CASE_INSENSITIVE);

  private static final Pattern RIS_LINE = Pattern.compile("^[A-Z][A-Z0-9]  - ?", Pattern.MULTILINE);

  private static final Pattern RIS_END = Pattern.compile("^ER  -", Pattern.MULTILINE);

  private static final Pattern MEDLINE_START =
      Pattern.compile("^(?:PMID|FAU |OWN |STAT|DCOM)- ?\\S", Pattern.MULTILINE);

  private static final Pattern BIBTEX_START =
      Pattern.compile("(?:^|[\\s}])@[A-Za-z]+\\s*[{(]", Pattern.MULTILINE);

  private static final Pattern READING_FORM = Pattern.compile("^PMID: ?\\d+", Pattern.MULTILINE);

  private FormatLook() {}

  static Optional<Format> of(String head) {
    String text = head.startsWith("\uFEFF") ? head.substring(1) : head;
    String start = text.stripLeading();
    if ((start.startsWith("[") && start.substring(1).stripLeading().matches("(?s)[{\\]].*"))
        || start.matches("(?s)\\{\\s*(\"|}).*")) {
      return Optional.of(Format.CSL_JSON);
    }
    int ris = first(RIS_START, text);
    int medline = first(MEDLINE_START, text);
    int bibtex = first(BIBTEX_START, text);
    if (ris == text.length() && RIS_END.matcher(text).find() && RIS_LINE.matcher(text).find()) {
      ris = first(RIS_LINE, text);
    }
    int least = Math.min(ris, Math.min(medline, bibtex));
    if (least == text.length()) {
      return Optional.empty();
    }
    return Optional.of(
        least == ris ? Format.RIS : least == medline ? Format.MEDLINE : Format.BIBTEX);
  }

  private static int first(Pattern pattern, String text) {
    Matcher found = pattern.matcher(text);
    return found.find() ? found.start() : text.length();
  }

  /** What the text seems to be instead, and what to do. */
  static Problem whyNone(String head) {
    if (head.isBlank() || head.equals("\uFEFF")) {
      return new Problem("", "empty-file", "The file holds nothing but blanks; export it again.");
    }
    if (READING_FORM.matcher(head).find()) {
      return new Problem(
          "",
          "reading-form",
          "The file is the form for reading, with numbered paragraphs, not the form with tags."
              + " Nothing was read. Export again and choose the MEDLINE form, with tags such as"
              + " PMID- and TI  - before each line.");
    }
    String first = head.strip().lines().findFirst().orElse("");
    String shown = first.length() > 80 ? first.substring(0, 80) + "..." : first;
    String like = first.split("[,;\\t]").length > 3 ? " It looks like a table." : "";
    return new Problem(
        "",
        "not-references",
        "The file holds no references that could be recognised; it starts with \""
            + shown
            + "\"."
            + like
            + " Nothing was read. "
            + EXPECTED);
  }
}
