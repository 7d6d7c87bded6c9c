package gapwise.table;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;

/**
 * A named file to read, wherever its bytes are.
 *
 * @param name the file's name as the person knows it, with its ending
 * @param opening gives the bytes from the start, each time it is asked
 */
public record TableFile(String name, Opening opening) {
  public TableFile {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(opening, "opening");
  }

  /** Opens the bytes for one reading; the reader closes them. */
  @FunctionalInterface
  public interface Opening {
    InputStream open() throws IOException;
  }

  /** A file on disk under its own name. */
  public static TableFile of(Path path) {
    return new TableFile(
        Objects.toString(path.getFileName(), path.toString()), () -> Files.newInputStream(path));
  }

  /** Bytes in memory, such as a small upload. */
  public static TableFile of(String name, byte[] content) {
    byte[] kept = content.clone();
    return new TableFile(name, () -> new ByteArrayInputStream(kept));
  }

  /** The name of the sheet that a CSV file is: its name without folders and without ".csv". */
  String sheet() {
    String file = name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
    return endsWith(".csv") ? file.substring(0, file.length() - ".csv".length()) : file;
  }

  boolean endsWith(String ending) {
    return name.regionMatches(true, name.length() - ending.length(), ending, 0, ending.length());
  }
}
