package gapwise.paper.file;

import gapwise.paper.Guard;
import gapwise.paper.Outcome;
import gapwise.paper.Page;
import gapwise.paper.Picture;
import gapwise.paper.Refused;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicReference;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.io.MemoryUsageSetting;
import org.apache.pdfbox.io.RandomAccessReadBufferedFile;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.encryption.InvalidPasswordException;

/**
 * An open PDF file, in the process that reads papers. Pages are read one by one when they are asked
 * for, and not kept. Scripts in it are never run, and nothing that it points to is fetched.
 */
final class PaperFile implements AutoCloseable {
  /** Programs look for the mark of a PDF in so many bytes, as the standard's annex advises. */
  private static final int HEAD = 1024;

  private final PDDocument document;
  private final GuardedFile source;
  private final AtomicReference<Guard> guard;
  private final int pages;
  private long told;

  private PaperFile(
      PDDocument document, GuardedFile source, AtomicReference<Guard> guard, int pages) {
    this.document = document;
    this.source = source;
    this.guard = guard;
    this.pages = pages;
  }

  /** Opens a file. */
  static Outcome<PaperFile> open(Path file, Guard guard) {
    return Errand.run(() -> attempt(file, guard));
  }

  private static PaperFile attempt(Path file, Guard guard) throws IOException {
    if (!Files.isRegularFile(file) || !Files.isReadable(file)) {
      throw new Guard.StoppedException(
          new Refused(Refused.Reason.MISSING, "There is no such file, or it may not be read."));
    }
    long bytes = Files.size(file);
    if (bytes > guard.caps().bytes()) {
      throw new Guard.StoppedException(
          new Refused(
              Refused.Reason.TOO_MANY_BYTES,
              "The file has "
                  + bytes
                  + " bytes, more than the "
                  + guard.caps().bytes()
                  + " that are read. Save the pages that matter as a file of their own."));
    }
    if (!beginsAsPdf(file)) {
      throw new Guard.StoppedException(
          new Refused(
              Refused.Reason.NOT_A_PDF,
              "The file is not a PDF: it does not begin as one. Choose the paper as a PDF file."));
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
      throw new Guard.StoppedException(
          new Refused(
              Refused.Reason.LOCKED,
              "The file is locked by a password. Open it with the password and save a copy without."));
    } catch (IOException | RuntimeException | StackOverflowError damaged) {
      source.close();
      throw damaged;
    }
  }

  private static PaperFile opened(
      PDDocument document, GuardedFile source, AtomicReference<Guard> guard) throws IOException {
    int pages = document.getNumberOfPages();
    int most = Objects.requireNonNull(guard.get(), "guard").caps().pages();
    if (pages >= 1 && pages <= most) {
      return new PaperFile(document, source, guard, pages);
    }
    document.close();
    throw new Guard.StoppedException(
        pages < 1
            ? Refused.damaged()
            : new Refused(
                Refused.Reason.TOO_MANY_PAGES,
                "The file says that it has "
                    + pages
                    + " pages, more than the "
                    + most
                    + " that are read. Save the pages that matter as a file of their own."));
  }

  private static boolean beginsAsPdf(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      return new String(in.readNBytes(HEAD), StandardCharsets.ISO_8859_1).contains("%PDF-");
    }
  }

  /** How many pages the file says it has, at least 1. */
  int pages() {
    return pages;
  }

  /** How many bytes of the file were handed to its reader since this was last asked. */
  long takenSince() {
    long all = source.taken();
    long since = all - told;
    told = all;
    return since;
  }

  /**
   * Reads what stands on a page, and no other page.
   *
   * @param number from 1
   */
  Outcome<Page> page(int number, Guard own) {
    guard.set(own);
    return Errand.run(
        () -> {
          own.look();
          return PageContent.read(document.getPage(number - 1), number, own);
        });
  }

  /**
   * Draws a page.
   *
   * @param number from 1
   * @param dotsPerInch less is taken where the picture would be too large
   */
  Outcome<Picture> picture(int number, int dotsPerInch, Guard own) {
    guard.set(own);
    return Errand.run(
        () -> {
          own.look();
          return PageDrawing.draw(document, number - 1, dotsPerInch, own);
        });
  }

  /** Lets the file go. */
  @Override
  public void close() {
    Errand.run(
        () -> {
          document.close();
          return true;
        });
  }
}
