package gapwise.reference;

import java.util.Objects;
import java.util.Optional;

/**
 * What a record says of another paper.
 *
 * @param relation how the paper of the record stands to the other one
 * @param text the other paper as printed
 * @param doi DOI of the other paper
 * @param pmid PubMed number of the other paper
 */
public record Link(Relation relation, String text, Optional<String> doi, Optional<String> pmid) {

  /** Relations of papers to notices, each with its word in the MEDLINE text form. */
  public enum Relation {
    RETRACTED_IN("RIN", "retraction in"),
    RETRACTS("ROF", "retraction of"),
    CORRECTED_IN("EIN", "erratum in"),
    CORRECTS("EFR", "erratum for"),
    COMMENTED_IN("CIN", "comment in"),
    COMMENTS_ON("CON", "comment on"),
    UPDATED_IN("UIN", "update in"),
    UPDATES("UOF", "update of"),
    CONCERN_IN("ECI", "expression of concern in"),
    CONCERN_FOR("ECF", "expression of concern for"),
    REPUBLISHED_IN("RPI", "republished in"),
    REPUBLISHED_FROM("RPF", "republished from");

    private final String tag;
    private final String words;

    Relation(String tag, String words) {
      this.tag = tag;
      this.words = words;
    }

    /** The tag of MEDLINE text, from memory of its list of tags. */
    public String tag() {
      return tag;
    }

    /** The words that stand before the other paper in notes. */
    public String words() {
      return words;
    }

    /** Whether the record that says so is itself the notice. */
    public boolean isOfNotice() {
      return this == RETRACTS || this == CORRECTS || this == COMMENTS_ON || this == CONCERN_FOR;
    }
  }

  public Link {
    Objects.requireNonNull(relation, "relation");
    Objects.requireNonNull(text, "text");
    Objects.requireNonNull(doi, "doi");
    Objects.requireNonNull(pmid, "pmid");
  }

  /** A link to a paper as printed, with the numbers that stand in the text. */
  public static Link to(Relation relation, String text) {
    return new Link(relation, text, Identifiers.doiIn(text), Identifiers.pmidIn(text));
  }
}
