package gapwise.paper;

import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;

/**
 * An open PDF file. Pages are read one by one when they are asked for, and not kept. Reading and
 * drawing are done by a process of their own, so that a file that hurts its reader hurts nothing
 * else; scripts in it are never run, and nothing that it points to is fetched.
 *
 * <p>Safe for use by many threads.
 */
public final class Paper implements AutoCloseable {
  private static final AtomicLong NUMBERS = new AtomicLong();

  private final Readers readers;
  private final long id;
  private final String file;
  private final Caps caps;
  private final int pages;
  private final AtomicInteger parsed = new AtomicInteger();
  private final AtomicLong taken = new AtomicLong();
  private volatile boolean closed;

  private Paper(Readers readers, Ask asked, Reply opened) {
    this.readers = readers;
    this.id = asked.paper();
    this.file = asked.file();
    this.caps = asked.caps();
    this.pages = opened.pages();
    taken.set(opened.taken());
  }

  /** Opens a file within the standard caps. */
  public static Opening open(Path file) {
    return open(file, Caps.STANDARD);
  }

  /** Opens a file. */
  public static Opening open(Path file, Caps caps) {
    return open(file, caps, Readers.OURS);
  }

  /** Opens a file that others than the usual processes read. */
  static Opening open(Path file, Caps caps, Readers readers) {
    String name = file.toAbsolutePath().toString();
    Ask ask = new Ask(Ask.What.OPEN, NUMBERS.incrementAndGet(), name, caps, 0, 0);
    Outcome<Reader.Said> outcome = readers.ask(ask);
    return outcome instanceof Outcome.Done<Reader.Said> done
        ? new Opened(new Paper(readers, ask, done.value().reply()))
        : ((Outcome.Undone<Reader.Said>) outcome).refused();
  }

  /** How many pages the file says it has, at least 1. */
  public int pages() {
    return pages;
  }

  /** How many times the drawing of a page was gone through for its words; to show what is not. */
  public int pagesParsed() {
    return parsed.get();
  }

  /** How many bytes of the file were handed to its reader so far; to show what is not read. */
  public long bytesTaken() {
    return taken.get();
  }

  /**
   * Reads what stands on a page, and no other page.
   *
   * @param number from 1
   */
  public PageReading page(int number) {
    Outcome<Reader.Said> outcome = ask(Ask.What.PAGE, number, 0);
    if (outcome instanceof Outcome.Done<Reader.Said> done) {
      parsed.incrementAndGet();
      return done.value().reply().page().orElseThrow();
    }
    return ((Outcome.Undone<Reader.Said>) outcome).refused();
  }

  /**
   * Draws a page.
   *
   * @param number from 1
   * @param dotsPerInch 10 to 1200; less is taken where the picture would be too large
   */
  public PagePicture picture(int number, int dotsPerInch) {
    if (dotsPerInch < 10 || dotsPerInch > 1200) {
      throw new IllegalArgumentException(
          "dotsPerInch must be between 10 and 1200, was " + dotsPerInch);
    }
    Outcome<Reader.Said> outcome = ask(Ask.What.PICTURE, number, dotsPerInch);
    if (outcome instanceof Outcome.Done<Reader.Said> done) {
      Reply.Drawing drawing = done.value().reply().drawing().orElseThrow();
      return new Picture(
          done.value().frame().picture(), drawing.width(), drawing.height(), drawing.dotsPerInch());
    }
    return ((Outcome.Undone<Reader.Said>) outcome).refused();
  }

  private Outcome<Reader.Said> ask(Ask.What what, int number, int dotsPerInch) {
    if (number < 1 || number > pages) {
      return new Outcome.Undone<>(
          new Refused(
              Refused.Reason.NO_SUCH_PAGE,
              "There is no page " + number + ". The file has pages 1 to " + pages + "."));
    }
    if (closed) {
      return new Outcome.Undone<>(new Refused(Refused.Reason.STOPPED, "The file was closed."));
    }
    Outcome<Reader.Said> outcome = readers.ask(new Ask(what, id, file, caps, number, dotsPerInch));
    if (outcome instanceof Outcome.Done<Reader.Said> done) {
      taken.addAndGet(done.value().reply().taken());
    }
    return outcome;
  }

  /** Lets the file go; further questions are refused. */
  @Override
  public void close() {
    closed = true;
    readers.close(id);
  }
}
