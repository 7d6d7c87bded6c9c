package gapwise.reference.format;

import gapwise.problem.Problem;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a file is, from its bytes alone: its encoding from all of them, its format from the first.
 *
 * @param format format, if it is one that is read
 * @param encoding encoding
 * @param problems what a person must know of the file as a whole
 */
record FileLook(Optional<Format> format, Encoding encoding, List<Problem> problems) {
  /** Bytes that are looked at to find the format; headers before a first record are shorter. */
  static final int HEAD = 1 << 16;

  /**
   * Fewer odd bytes are damage, told at their places; a whole file in another encoding has more.
   */
  private static final int MANY = 5;

  FileLook {
    problems = List.copyOf(problems);
  }

  static FileLook at(ReferenceFile file) throws IOException {
    byte[] head;
    try (var stream = file.bytes().open()) {
      head = stream.readNBytes(HEAD);
    }
    if (head.length == 0) {
      return refused("empty-file", "The file is empty; export the records again.");
    }
    Optional<Problem> foreign = ForeignFile.problem(head);
    if (foreign.isPresent()) {
      return new FileLook(Optional.empty(), Encoding.UTF_8, List.of(foreign.get()));
    }
    Encoding encoding = wide(head).orElse(Encoding.UTF_8);
    List<Problem> problems = new ArrayList<>();
    if (encoding == Encoding.UTF_8) {
      encoding = eightBits(file);
      if (encoding == Encoding.WINDOWS_1252) {
        problems.add(
            new Problem(
                "",
                "not-utf-8",
                "The file is not UTF-8. It was read as Windows-1252, the old encoding of Western"
                    + " Europe; look at the names and accents, and export as UTF-8 if they are"
                    + " wrong."));
      }
    }
    String text = new String(head, Charset.forName(encoding.charset()));
    Optional<Format> format = FormatLook.of(text);
    if (format.isEmpty()) {
      problems.clear();
      problems.add(FormatLook.whyNone(text));
    }
    return new FileLook(format, encoding, problems);
  }

  private static FileLook refused(String code, String message) {
    return new FileLook(Optional.empty(), Encoding.UTF_8, List.of(new Problem("", code, message)));
  }

  /** Two bytes a letter: by the mark at the start, or by a zero in every other byte. */
  private static Optional<Encoding> wide(byte[] head) {
    if (head.length >= 2 && (head[0] & 0xff) == 0xff && (head[1] & 0xff) == 0xfe) {
      return Optional.of(Encoding.UTF_16_LITTLE);
    }
    if (head.length >= 2 && (head[0] & 0xff) == 0xfe && (head[1] & 0xff) == 0xff) {
      return Optional.of(Encoding.UTF_16_BIG);
    }
    int even = 0;
    int odd = 0;
    for (int at = 0; at < head.length; at++) {
      if (head[at] == 0) {
        if (at % 2 == 0) {
          even++;
        } else {
          odd++;
        }
      }
    }
    int pairs = head.length / 2;
    if (odd > 0.4 * pairs && even < 0.05 * pairs) {
      return Optional.of(Encoding.UTF_16_LITTLE);
    }
    return even > 0.4 * pairs && odd < 0.05 * pairs
        ? Optional.of(Encoding.UTF_16_BIG)
        : Optional.empty();
  }

  /** More letters that are UTF-8 beyond ASCII than bytes that are not: UTF-8 with damage. */
  private static Encoding eightBits(ReferenceFile file) throws IOException {
    long good = 0;
    long bad = 0;
    try (Bytes bytes = new Bytes(file.bytes().open())) {
      while (bytes.ahead(0) >= 0) {
        int length = bytes.sequence();
        good += length > 1 ? 1 : 0;
        bad += length == 0 ? 1 : 0;
        bytes.take(Math.max(1, length));
      }
    }
    return bad > good && bad >= MANY ? Encoding.WINDOWS_1252 : Encoding.UTF_8;
  }

  /** For tests of what is told: the charset for people. */
  String charsetName() {
    return encoding == Encoding.UTF_8 ? StandardCharsets.UTF_8.name() : encoding.charset();
  }
}
