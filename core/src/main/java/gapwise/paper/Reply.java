package gapwise.paper;

import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import java.io.IOException;
import java.util.Objects;
import java.util.Optional;

/**
 * What the process that reads papers answers.
 *
 * @param pages of a file that was opened; 0 else
 * @param page that was read
 * @param drawing that was made, whose bytes travel beside
 * @param refused why not
 * @param taken bytes of the file that were handed to its reader for this
 */
public record Reply(
    int pages,
    Optional<Page> page,
    Optional<Drawing> drawing,
    Optional<Refused> refused,
    long taken) {
  /** For both sides, which are one program. */
  static final JsonMapper JSON = JsonMapper.builder().addModule(new Jdk8Module()).build();

  /**
   * A picture without its bytes.
   *
   * @param width pixels
   * @param height pixels
   * @param dotsPerInch really used
   */
  public record Drawing(int width, int height, double dotsPerInch) {}

  public Reply {
    Objects.requireNonNull(page, "page");
    Objects.requireNonNull(drawing, "drawing");
    Objects.requireNonNull(refused, "refused");
  }

  /** The answer to a file that was opened, or let go. */
  public static Reply opened(int pages, long taken) {
    return new Reply(pages, Optional.empty(), Optional.empty(), Optional.empty(), taken);
  }

  public static Reply of(Refused refused, long taken) {
    return new Reply(0, Optional.empty(), Optional.empty(), Optional.of(refused), taken);
  }

  public static Reply of(Page page, long taken) {
    return new Reply(0, Optional.of(page), Optional.empty(), Optional.empty(), taken);
  }

  public static Reply of(Picture picture, long taken) {
    Drawing drawing = new Drawing(picture.width(), picture.height(), picture.dotsPerInch());
    return new Reply(0, Optional.empty(), Optional.of(drawing), Optional.empty(), taken);
  }

  /** What a process says once when it has started. */
  public static Frame greeting() throws IOException {
    return opened(0, 0).frame();
  }

  public Frame frame() throws IOException {
    return Frame.of(JSON.writeValueAsBytes(this));
  }

  public static Reply read(Frame frame) throws IOException {
    return JSON.readValue(frame.text(), Reply.class);
  }
}
