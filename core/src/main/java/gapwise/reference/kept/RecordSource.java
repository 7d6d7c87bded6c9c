package gapwise.reference.kept;

import gapwise.reference.format.Format;
import java.util.Objects;

/**
 * Where a kept reference stands in a file that was handed in.
 *
 * @param load key of the load, which is a hash of the file's bytes
 * @param file name of the file
 * @param format its format
 * @param number number of the record in the file, from 1
 * @param line first line of the record
 */
public record RecordSource(String load, String file, Format format, int number, int line) {
  public RecordSource {
    Objects.requireNonNull(load, "load");
    Objects.requireNonNull(file, "file");
    Objects.requireNonNull(format, "format");
    if (number < 1 || line < 0) {
      throw new IllegalArgumentException(
          "records count from 1 and lines from 0, were " + number + " and " + line);
    }
  }
}
