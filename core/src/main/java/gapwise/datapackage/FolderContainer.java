package gapwise.datapackage;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** A folder. What a link in it names outside of it is not there. */
final class FolderContainer implements Container {
  private final Path folder;

  FolderContainer(Path folder) throws IOException {
    this.folder = folder.toRealPath();
  }

  @Override
  public Optional<InputStream> open(String path) throws IOException {
    Path file = folder.resolve(path);
    if (!Files.isRegularFile(file) || !file.toRealPath().startsWith(folder)) {
      return Optional.empty();
    }
    return Optional.of(Files.newInputStream(file));
  }

  @Override
  public void close() {}
}
