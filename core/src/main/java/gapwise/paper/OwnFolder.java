package gapwise.paper;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The folder of temporary files of one process that reads papers. Whoever of the process and its
 * server lives longer deletes it.
 */
public record OwnFolder(Path path) {
  private static final String PROPERTY = "gapwise.reader.folder";

  /** A new one, for its owner alone. */
  static OwnFolder make() throws IOException {
    return new OwnFolder(Files.createTempDirectory("gapwise-reader"));
  }

  /** That of this process; empty where it was not started to read papers. */
  public static Optional<OwnFolder> ofThisProcess() {
    return Optional.ofNullable(System.getProperty(PROPERTY)).map(Path::of).map(OwnFolder::new);
  }

  /** What a Java machine is told so that its temporary files go there. */
  List<String> options() {
    return List.of("-Djava.io.tmpdir=" + path, "-D" + PROPERTY + "=" + path);
  }

  /** Deletes it with all that is in it; what cannot be deleted stays. */
  public void delete() {
    try (Stream<Path> all = Files.walk(path)) {
      for (Path one : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(one);
      }
    } catch (IOException | UncheckedIOException left) {
      // The other side deletes it, or the operating system does as with all temporary files.
      path.toFile().deleteOnExit();
    }
  }
}
