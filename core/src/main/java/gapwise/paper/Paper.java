package gapwise.paper;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.locks.ReentrantLock;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.io.MemoryUsageSetting;
import org.apache.pdfbox.io.RandomAccessReadBufferedFile;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.encryption.InvalidPasswordException;

/**
 * An open PDF file. Pages are read one by one when they are asked for, and not kept. Scripts in it
 * are never run, and nothing that it points to is fetched.
 *
 * <p>Safe for use by many threads, which wait for one another.
 */
public final class Paper implements AutoCloseable {
  /** Programs look for the mark of a PDF in so many bytes, as the standard's annex advises. */
  private static final int HEAD = 1024;

  private final PDDocument document;
  private final GuardedFile source;
  private final Caps caps;
  private final AtomicReference<Guard> guard;
  private final int pages;
  private final AtomicInteger parsed = new AtomicInteger();
  private final ReentrantLock turn = new ReentrantLock();
  private volatile boolean closed;

  private Paper(
      PDDocument document, GuardedFile source, Caps caps, AtomicReference<Guard> guard, int pages) {
    this.document = document;
    this.source = source;
    this.caps = caps;
    this.guard = guard;
    this.pages = pages;
  }

  /** Opens a file within the standard caps. */
  public static Opening open(Path file) {
    return open(file, Caps.STANDARD);
  }

  /** Opens a file. */
  public static Opening open(Path file, Caps caps) {
    Guard guard = new Guard(caps);
    Errand.Outcome<Opening> outcome = Errand.run(guard, () -> attempt(file, guard));
    return outcome instanceof Errand.Done<Opening> done
        ? done.value()
        : ((Errand.Undone<Opening>) outcome).refused();
  }

  private static Opening attempt(Path file, Guard guard) throws IOException {
    if (!Files.isRegularFile(file) || !Files.isReadable(file)) {
      return new Refused(Refused.Reason.MISSING, "There is no such file, or it may not be read.");
    }
    long bytes = Files.size(file);
    if (bytes > guard.caps().bytes()) {
      return new Refused(
          Refused.Reason.TOO_MANY_BYTES,
          "The file has "
              + bytes
              + " bytes, more than the "
              + guard.caps().bytes()
              + " that are read. Save the pages that matter as a file of their own.");
    }
    if (!beginsAsPdf(file)) {
      return new Refused(
          Refused.Reason.NOT_A_PDF,
          "The file is not a PDF: it does not begin as one. Choose the paper as a PDF file.");
    }
    PackedParts.check(file, guard);
    OwnTypefaces.install();
    AtomicReference<Guard> current = new AtomicReference<>(guard);
    GuardedFile source =
        new GuardedFile(new RandomAccessReadBufferedFile(file.toFile()), current::get);
    try {
      PDDocument document =
          Loader.loadPDF(
              source,
              MemoryUsageSetting.setupTempFileOnly(guard.caps().temporaryBytes()).streamCache);
      return opened(document, source, current);
    } catch (InvalidPasswordException locked) {
      source.close();
      return new Refused(
          Refused.Reason.LOCKED,
          "The file is locked by a password. Open it with the password and save a copy without.");
    } catch (IOException | RuntimeException | StackOverflowError damaged) {
      source.close();
      throw damaged;
    }
  }

  private static Opening opened(
      PDDocument document, GuardedFile source, AtomicReference<Guard> guard) throws IOException {
    int pages = document.getNumberOfPages();
    Caps caps = Objects.requireNonNull(guard.get(), "guard").caps();
    int most = caps.pages();
    if (pages >= 1 && pages <= most) {
      return new Opened(new Paper(document, source, caps, guard, pages));
    }
    document.close();
    return pages < 1
        ? Refused.damaged()
        : new Refused(
            Refused.Reason.TOO_MANY_PAGES,
            "The file says that it has "
                + pages
                + " pages, more than the "
                + most
                + " that are read. Save the pages that matter as a file of their own.");
  }

  private static boolean beginsAsPdf(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      return new String(in.readNBytes(HEAD), StandardCharsets.ISO_8859_1).contains("%PDF-");
    }
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
    return source.taken();
  }

  /**
   * Reads what stands on a page, and no other page.
   *
   * @param number from 1
   */
  public PageReading page(int number) {
    Errand.Outcome<Page> outcome =
        inTurn(
            number,
            own -> {
              parsed.incrementAndGet();
              return PageContent.read(document.getPage(number - 1), number, own);
            });
    return outcome instanceof Errand.Done<Page> done
        ? done.value()
        : ((Errand.Undone<Page>) outcome).refused();
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
    Errand.Outcome<Picture> outcome =
        inTurn(number, own -> PageDrawing.draw(document, number - 1, dotsPerInch, own));
    return outcome instanceof Errand.Done<Picture> done
        ? done.value()
        : ((Errand.Undone<Picture>) outcome).refused();
  }

  private interface Part<T> {
    T run(Guard own) throws IOException;
  }

  private <T> Errand.Outcome<T> inTurn(int number, Part<T> part) {
    if (number < 1 || number > pages) {
      return new Errand.Undone<>(
          new Refused(
              Refused.Reason.NO_SUCH_PAGE,
              "There is no page " + number + ". The file has pages 1 to " + pages + "."));
    }
    Guard own = new Guard(caps);
    return Errand.run(
        own,
        () -> {
          turn.lock();
          try {
            if (closed) {
              throw new Guard.StoppedException(
                  new Refused(Refused.Reason.STOPPED, "The file was closed."));
            }
            guard.set(own);
            own.look();
            return part.run(own);
          } finally {
            turn.unlock();
          }
        });
  }

  /** Ends what is being read and lets the file go; further questions are refused. */
  @Override
  public void close() {
    closed = true;
    Objects.requireNonNull(guard.get(), "guard").stop();
    Errand.run(
        new Guard(caps),
        () -> {
          turn.lock();
          try {
            document.close();
            return true;
          } finally {
            turn.unlock();
          }
        });
  }
}
