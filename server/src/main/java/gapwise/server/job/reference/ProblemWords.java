package gapwise.server.job.reference;

import static gapwise.sentence.Sentences.say;

/** What a problem of a record is, by its code, under which all of its kind stand. */
final class ProblemWords {
  private ProblemWords() {}

  /** The sentence of a kind; codes that ask for the same look share one. */
  static String of(String code) {
    return switch (code) {
      case "no-title", "title-twice" -> say("references.kind-title");
      case "no-year", "year-twice" -> say("references.kind-year");
      case "no-kind", "unknown-kind" -> say("references.kind-kind");
      case "authors-not-read", "empty-author" -> say("references.kind-authors");
      case "no-doi", "doi-twice", "no-pmid", "pmid-twice" -> say("references.kind-numbers");
      case "no-key", "key-twice" -> say("references.kind-key");
      case "odd-bytes" -> say("references.kind-bytes");
      case "too-long", "too-many-fields" -> say("references.kind-long");
      case "no-end", "cut-off", "brace-open" -> say("references.kind-cut");
      case "loose-tag", "line-without-tag", "blank-line", "stray-lines", "syntax", "broken-item" ->
          say("references.kind-form");
      default -> say("references.kind-other");
    };
  }
}
