package gapwise.paper;

import java.io.IOException;
import java.util.Objects;

/**
 * What the process that reads papers is asked.
 *
 * @param what to do
 * @param paper number by which an open file is known; never used again for another
 * @param file the one file that is read; empty text where none is needed
 * @param caps within which
 * @param page number of the page from 1; 0 where none is meant
 * @param dotsPerInch of a picture; 0 where none is meant
 */
public record Ask(What what, long paper, String file, Caps caps, int page, int dotsPerInch) {
  /** What may be asked. */
  public enum What {
    /** Open the file, which stays open for the next questions. */
    OPEN,
    /** Read a page. */
    PAGE,
    /** Draw a page. */
    PICTURE,
    /** Let the file go. */
    CLOSE,
    /** End what is being done now; it has no answer of its own. */
    STOP
  }

  public Ask {
    Objects.requireNonNull(what, "what");
    Objects.requireNonNull(file, "file");
    Objects.requireNonNull(caps, "caps");
  }

  /** What needs no file and no page. */
  public static Ask of(What what, long paper) {
    return new Ask(what, paper, "", Caps.STANDARD, 0, 0);
  }

  public Frame frame() throws IOException {
    return Frame.of(Reply.JSON.writeValueAsBytes(this));
  }

  public static Ask read(Frame frame) throws IOException {
    return Reply.JSON.readValue(frame.text(), Ask.class);
  }
}
