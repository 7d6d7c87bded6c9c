package gapwise.reference;

import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * Kinds of publications, with their words in RIS and CSL-JSON; the first word of each is written.
 */
public enum Kind {
  ARTICLE(
      Set.of("JOUR", "EJOUR", "JFULL", "INPR", "MGZN", "NEWS"),
      "article-journal",
      Set.of(
          "article",
          "article-magazine",
          "article-newspaper",
          "journal-article",
          "review",
          "periodical")),
  MEETING(
      Set.of("ABST", "CONF", "CPAPER"),
      "paper-conference",
      Set.of("speech", "event", "proceedings-article")),
  PREPRINT(Set.of("UNPB"), "article", Set.of("manuscript", "preprint", "posted-content")),
  BOOK(Set.of("BOOK", "EBOOK", "EDBOOK"), "book", Set.of("classic", "collection")),
  CHAPTER(
      Set.of("CHAP", "ECHAP"),
      "chapter",
      Set.of("book-chapter", "entry", "entry-dictionary", "entry-encyclopedia")),
  THESIS(Set.of("THES"), "thesis", Set.of()),
  REPORT(
      Set.of("RPRT", "GOVDOC", "STAND"),
      "report",
      Set.of("standard", "regulation", "bill", "legislation")),
  DATASET(Set.of("DATA", "AGGR", "DBASE"), "dataset", Set.of("software", "figure")),
  WEB(
      Set.of("ELEC", "BLOG", "WEB", "ICOMM"),
      "webpage",
      Set.of("post", "post-weblog", "broadcast", "document")),
  OTHER(
      Set.of(
          "GEN", "ANCIENT", "ART", "BILL", "CASE", "COMP", "CTLG", "DICT", "ENCYC", "FIGURE",
          "GRANT", "HEAR", "LEGAL", "MANSCPT", "MAP", "MPCT", "MULTI", "MUSIC", "PAMP", "PAT",
          "PCOMM", "SER", "SLIDE", "SOUND", "STAT", "UNBILL", "VIDEO"),
      "document",
      Set.of(
          "graphic",
          "hearing",
          "interview",
          "legal_case",
          "map",
          "motion_picture",
          "musical_score",
          "pamphlet",
          "patent",
          "performance",
          "personal_communication",
          "song",
          "treaty",
          "review-book"));

  @SuppressWarnings("ImmutableEnumChecker") // Set.of is immutable
  private final Set<String> ris;

  private final String csl;

  @SuppressWarnings("ImmutableEnumChecker") // Set.of is immutable
  private final Set<String> otherCsl;

  Kind(Set<String> ris, String csl, Set<String> otherCsl) {
    this.ris = ris;
    this.csl = csl;
    this.otherCsl = otherCsl;
  }

  /** The word that RIS has for it. */
  public String ris() {
    return switch (this) {
      case ARTICLE -> "JOUR";
      case MEETING -> "ABST";
      case PREPRINT -> "UNPB";
      case BOOK -> "BOOK";
      case CHAPTER -> "CHAP";
      case THESIS -> "THES";
      case REPORT -> "RPRT";
      case DATASET -> "DATA";
      case WEB -> "ELEC";
      case OTHER -> "GEN";
    };
  }

  /** The word that CSL-JSON has for it. */
  public String csl() {
    return csl;
  }

  /** The kind of a word of RIS. */
  public static Optional<Kind> ofRis(String word) {
    String capital = word.strip().toUpperCase(Locale.ROOT);
    for (Kind kind : values()) {
      if (kind.ris.contains(capital)) {
        return Optional.of(kind);
      }
    }
    return Optional.empty();
  }

  /** The kind of a word of CSL-JSON; "article" by itself is any article that is no journal's. */
  public static Optional<Kind> ofCsl(String word) {
    String small = word.strip().toLowerCase(Locale.ROOT);
    for (Kind kind : values()) {
      if ((small.equals(kind.csl) && kind != PREPRINT && kind != OTHER)
          || kind.otherCsl.contains(small)) {
        return Optional.of(kind);
      }
    }
    return Optional.empty();
  }
}
