package gapwise.reference.pair;

import gapwise.reference.Kind;
import gapwise.reference.Link;
import gapwise.reference.Reference;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** What a record is, for the question which records belong together. */
enum Nature {
  PAPER("a paper"),
  MEETING_ABSTRACT("an abstract of a meeting"),
  PREPRINT("a preprint"),
  PROTOCOL("a protocol"),
  RETRACTION("a retraction notice"),
  CORRECTION("a correction"),
  CONCERN("an expression of concern"),
  COMMENT("a comment or reply");

  private static final Pattern PROTOCOL_TITLE =
      Pattern.compile(
          "\\b(?:study|trial|review)\\s+protocol\\b"
              + "|\\bprotocol\\s+(?:of|for)\\b[^:]*\\b(?:trial|study|review|cohort|regist\\w+|evaluation|comparison)\\b|\\b(?:rationale|methods)"
              + " and (?:study )?design\\b|\\bdesign and (?:rationale|methods)\\b"
              + "|[:.(-]\\s*(?:a\\s+)?protocol\\b",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern MEETING_NAME =
      Pattern.compile(
          "\\b(?:abstracts?|proceedings|meeting|congress|conference|symposium|kongress|congreso|congr[e\u00e8]s|tagung|convention)\\b",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern PREPRINT_NAME =
      Pattern.compile("prepr|rxiv\\b|\\bworking paper", Pattern.CASE_INSENSITIVE);

  private final String words;

  Nature(String words) {
    this.words = words;
  }

  /** As it stands in sentences. */
  String words() {
    return words;
  }

  boolean isNotice() {
    return this == RETRACTION || this == CORRECTION || this == CONCERN || this == COMMENT;
  }

  static Nature of(Reference reference, NoticeTitle title) {
    return byLinks(reference)
        .or(() -> byKinds(reference))
        .or(title::notice)
        .orElseGet(() -> publication(reference));
  }

  private static Optional<Nature> byLinks(Reference reference) {
    return reference.links().stream()
        .flatMap(link -> ofNotice(link.relation()).stream())
        .findFirst();
  }

  private static Optional<Nature> ofNotice(Link.Relation relation) {
    return switch (relation) {
      case RETRACTS -> Optional.of(RETRACTION);
      case CORRECTS -> Optional.of(CORRECTION);
      case CONCERN_FOR -> Optional.of(CONCERN);
      case COMMENTS_ON -> Optional.of(COMMENT);
      default -> Optional.empty();
    };
  }

  private static Optional<Nature> byKinds(Reference reference) {
    for (String printed : reference.kindsPrinted()) {
      String small = printed.toLowerCase(Locale.ROOT);
      if (small.equals("retraction of publication")
          || small.equals("a retraction notice")
          || small.equals("retraction")) {
        return Optional.of(RETRACTION);
      }
      if (small.equals("published erratum")
          || small.equals("erratum")
          || small.equals("a correction")
          || small.equals("corrigendum")) {
        return Optional.of(CORRECTION);
      }
      if (small.equals("expression of concern")) {
        return Optional.of(CONCERN);
      }
      if (small.equals("comment")) {
        return Optional.of(COMMENT);
      }
    }
    return Optional.empty();
  }

  private static Nature publication(Reference reference) {
    String journal =
        reference.published().journal().orElse("")
            + " | "
            + reference.published().shortJournal().orElse("");
    boolean article = reference.kind().filter(kind -> kind == Kind.ARTICLE).isPresent();
    if (reference.kind().filter(kind -> kind == Kind.PREPRINT).isPresent()
        || PREPRINT_NAME.matcher(journal).find()) {
      return PREPRINT;
    }
    if (reference.kind().filter(kind -> kind == Kind.MEETING).isPresent()
        || ((!article || reference.published().pages().map(Nature::isOnePage).orElse(false))
            && MEETING_NAME.matcher(journal).find())
        || isInSupplement(reference)) {
      return MEETING_ABSTRACT;
    }
    return PROTOCOL_TITLE.matcher(reference.titles().main()).find() ? PROTOCOL : PAPER;
  }

  /** One page of a supplement, numbered as such, holds an abstract. */
  private static boolean isInSupplement(Reference reference) {
    String issue =
        reference.published().volume().orElse("") + reference.published().issue().orElse("");
    return issue.toLowerCase(Locale.ROOT).contains("suppl")
        && reference.published().pages().filter(pages -> pages.matches("[sS]\\d+")).isPresent();
  }

  /**
   * An abstract fills a page; a journal with "proceedings" in its name prints papers of several.
   */
  private static boolean isOnePage(String pages) {
    return !pages.contains("-");
  }
}
