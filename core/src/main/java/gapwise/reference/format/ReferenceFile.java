package gapwise.reference.format;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;

/**
 * A file of references that can be opened more than once, since its encoding is found before it is
 * read.
 *
 * @param name name for people
 * @param bytes opens it from its start
 */
public record ReferenceFile(String name, Opening bytes) {
  /** Opens bytes from their start. */
  @FunctionalInterface
  public interface Opening {
    /** A new stream, which the caller closes. */
    InputStream open() throws IOException;
  }

  public ReferenceFile {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(bytes, "bytes");
  }

  /** A file on disk. */
  public static ReferenceFile at(Path path) {
    String name = Objects.requireNonNullElse(path.getFileName(), path).toString();
    return new ReferenceFile(name, () -> Files.newInputStream(path));
  }

  /** Bytes in memory. */
  public static ReferenceFile of(String name, byte[] bytes) {
    byte[] kept = bytes.clone();
    return new ReferenceFile(name, () -> new ByteArrayInputStream(kept));
  }

  /** A text, as UTF-8. */
  public static ReferenceFile of(String name, String text) {
    return of(name, text.getBytes(StandardCharsets.UTF_8));
  }
}
