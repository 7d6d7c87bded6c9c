package gapwise.paper.file;

import gapwise.paper.Guard;
import gapwise.paper.Refused;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;

/**
 * Looks at the packed parts of a file before PDFBox does, which unpacks whole parts in memory: a
 * part of a few kilobytes can unpack to gigabytes. Each part is unpacked here piece by piece and
 * only counted. What is packed twice is counted again where a page is drawn.
 */
final class PackedParts {
  private static final byte[] START = "stream".getBytes(StandardCharsets.US_ASCII);

  /** A part of the file's own lists of objects is read whole and often, so it may be less. */
  private static final int LISTS_OF_OBJECTS_SHARE = 4;

  private static final int BLOCK = 1 << 16;
  private static final int PIECE = 4096;

  private final Guard guard;
  private final byte[] taken = new byte[BLOCK];
  private final byte[] unpacked = new byte[BLOCK];
  private int lastTaken;

  private PackedParts(Guard guard) {
    this.guard = guard;
  }

  /**
   * Counts every part.
   *
   * @throws Guard.StoppedException if one is too large
   */
  static void check(Path file, Guard guard) throws IOException {
    try (InputStream in = new BufferedInputStream(Files.newInputStream(file), BLOCK)) {
      new PackedParts(guard).check(in);
    }
  }

  private void check(InputStream in) throws IOException {
    int matched = 0;
    Recent before = new Recent();
    for (int b = in.read(); b >= 0; b = in.read()) {
      guard.tick();
      before.add((byte) b);
      matched = b == START[matched] ? matched + 1 : b == START[0] ? 1 : 0;
      if (matched == START.length) {
        matched = 0;
        if (!before.text().endsWith("endstream")) {
          part(in, before.text());
        }
      }
    }
  }

  private void part(InputStream in, String head) throws IOException {
    in.mark(BLOCK);
    int first = in.read();
    while (first == '\r' || first == '\n') {
      first = in.read();
    }
    in.reset();
    if (first != 0x78) {
      return;
    }
    boolean list = head.contains("/ObjStm") || head.contains("/XRef");
    long most = guard.caps().unpackedBytes() / (list ? LISTS_OF_OBJECTS_SHARE : 1);
    unpack(in, most);
  }

  /** Reads to the end of the part; what is damaged is left to the reader proper. */
  private void unpack(InputStream in, long most) throws IOException {
    Inflater inflater = new Inflater();
    long count = 0;
    try {
      boolean begun = false;
      while (!inflater.finished()) {
        guard.tick();
        if (inflater.needsInput()) {
          in.mark(BLOCK);
          lastTaken = Math.max(0, in.read(taken, 0, PIECE));
          if (lastTaken == 0) {
            return;
          }
          int skip = 0;
          while (!begun && skip < lastTaken && (taken[skip] == '\r' || taken[skip] == '\n')) {
            skip++;
          }
          begun = true;
          inflater.setInput(taken, skip, lastTaken - skip);
        }
        int made = inflater.inflate(unpacked);
        if (made == 0 && !inflater.needsInput()) {
          return;
        }
        count += made;
        if (count > most) {
          throw new Guard.StoppedException(
              Refused.tooMuch("a packed part of more than " + most + " bytes"));
        }
      }
      giveBack(in, inflater.getRemaining());
    } catch (DataFormatException damaged) {
      giveBack(in, inflater.getRemaining());
    } finally {
      inflater.end();
    }
  }

  /** The block that was read last starts at the mark; what was not used is read again. */
  private void giveBack(InputStream in, int unused) throws IOException {
    in.reset();
    for (int i = 0; i < lastTaken - unused && in.read() >= 0; i++) {
      guard.tick();
    }
  }

  /** The last bytes before a part, which hold what the file says of it. */
  private static final class Recent {
    private static final int KEPT = 400;
    private final byte[] bytes = new byte[KEPT];
    private long count;

    void add(byte b) {
      bytes[(int) (count++ % KEPT)] = b;
    }

    String text() {
      int length = (int) Math.min(count, KEPT);
      byte[] ordered = new byte[length];
      for (int i = 0; i < length; i++) {
        ordered[i] = bytes[(int) ((count - length + i) % KEPT)];
      }
      return new String(ordered, StandardCharsets.ISO_8859_1);
    }
  }
}
