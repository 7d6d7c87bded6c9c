package gapwise.reference.kept;

import gapwise.reference.format.Format;
import gapwise.reference.format.ReadRecord;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.Iterator;
import java.util.NoSuchElementException;
import java.util.Optional;

/**
 * Records that were read and wait for a person to accept them, one line each, so that what is kept
 * is what was shown and never lies in memory as a whole.
 */
public final class Spool {
  private Spool() {}

  /**
   * Adds a record, if it was read; one that was refused stays out.
   *
   * @param load key of its file
   * @param file name of its file
   */
  public static void add(Writer target, String load, String file, Format format, ReadRecord record)
      throws IOException {
    if (record instanceof ReadRecord.Read read) {
      RecordSource source = new RecordSource(load, file, format, read.number(), read.line());
      target.write(KeptJson.write(new SpooledRecord(read.reference(), source)));
      target.write('\n');
    }
  }

  /**
   * The records one after another; the reader is not closed.
   *
   * @return throws {@link UncheckedIOException} when the reader fails, and {@link
   *     IllegalArgumentException} at a line that is none of ours
   */
  public static Iterator<SpooledRecord> read(BufferedReader lines) {
    return new Iterator<>() {
      private Optional<String> next = line();

      private Optional<String> line() {
        try {
          return Optional.ofNullable(lines.readLine());
        } catch (IOException unread) {
          throw new UncheckedIOException("records that wait cannot be read", unread);
        }
      }

      @Override
      public boolean hasNext() {
        return next.isPresent();
      }

      @Override
      public SpooledRecord next() {
        String text = next.orElseThrow(() -> new NoSuchElementException("all records were read"));
        next = line();
        return KeptJson.read(text, SpooledRecord.class);
      }
    };
  }
}
