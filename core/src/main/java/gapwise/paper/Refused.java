package gapwise.paper;

import java.util.Objects;

/**
 * Why a file or a page of it was not read.
 *
 * @param reason for programs
 * @param sentence for people: what was found and what to do
 */
public record Refused(Reason reason, String sentence) implements Opening, PageReading, PagePicture {
  /** Kinds of reasons. */
  public enum Reason {
    /** The file cannot be reached. */
    MISSING,
    NOT_A_PDF,
    NOT_A_PICTURE,
    LOCKED,
    DAMAGED,
    TOO_MANY_BYTES,
    TOO_MANY_PAGES,
    /** A page, a picture or a packed part passes a cap. */
    TOO_MUCH,
    TOO_SLOW,
    /** Whoever asked no longer waits, or the file was closed. */
    STOPPED,
    /** Other files take all the room there is for reading. */
    BUSY,
    NO_SUCH_PAGE
  }

  public Refused {
    Objects.requireNonNull(reason, "reason");
    Objects.requireNonNull(sentence, "sentence");
  }

  public static Refused damaged() {
    return new Refused(
        Reason.DAMAGED,
        "The file is damaged and cannot be read. Save it again from the program that shows it, or"
            + " fetch it once more.");
  }

  public static Refused tooMuch(String what) {
    return new Refused(
        Reason.TOO_MUCH,
        "The page holds "
            + what
            + ", more than is read of one page. Print it to a new PDF file and try that one.");
  }
}
