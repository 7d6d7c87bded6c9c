package gapwise.server.job;

import gapwise.store.OwnerOnly;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The folder in which uploads lie until they are stored or given up. */
public final class UploadFolder {
  private static final Logger LOG = LoggerFactory.getLogger(UploadFolder.class);

  private UploadFolder() {}

  /**
   * Makes the folder, for its owner alone, and clears out what a server that was killed left there:
   * nobody can acknowledge it any more.
   *
   * @throws UncheckedIOException when it cannot be made
   */
  public static Path prepared(Path folder) {
    try {
      OwnerOnly.folders(folder);
      OwnerOnly.tighten(folder);
      clear(folder);
      return folder;
    } catch (IOException unmade) {
      throw new UncheckedIOException(
          "The folder for uploads, " + folder + ", cannot be used: " + unmade.getMessage(), unmade);
    }
  }

  private static void clear(Path folder) throws IOException {
    try (var left = Files.newDirectoryStream(folder)) {
      for (Path path : left) {
        delete(path);
      }
    }
  }

  /**
   * Deletes a file, or a folder with all that is in it; what cannot be deleted is told and left.
   */
  public static void delete(Path path) {
    try {
      Files.walkFileTree(
          path,
          new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes)
                throws IOException {
              Files.deleteIfExists(file);
              return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult postVisitDirectory(Path inside, IOException failure)
                throws IOException {
              Files.deleteIfExists(inside);
              return FileVisitResult.CONTINUE;
            }
          });
    } catch (IOException undeleted) {
      LOG.warn("uploads in {} could not be deleted: {}", path, undeleted.getMessage());
    }
  }
}
