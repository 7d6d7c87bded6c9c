package gapwise.datapackage;

import gapwise.store.OwnerOnly;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

/**
 * A new folder. It is written under a name that says that it is unfinished, and takes its own when
 * all is there.
 */
final class FolderDestination implements Destination {
  private final Path target;
  private final Path unfinished;
  private boolean finished;

  FolderDestination(Path target) throws IOException {
    this.target = target.toAbsolutePath();
    this.unfinished = Unfinished.beside(this.target);
    OwnerOnly.folders(unfinished);
  }

  @Override
  public OutputStream next(String path) throws IOException {
    Path file = unfinished.resolve(path);
    OwnerOnly.folders(Objects.requireNonNull(file.getParent(), path));
    return new BufferedOutputStream(OwnerOnly.newFile(file));
  }

  @Override
  public void finish() throws IOException {
    Files.move(unfinished, target);
    finished = true;
  }

  @Override
  public void close() throws IOException {
    if (finished) {
      return;
    }
    List<Path> left;
    try (Stream<Path> all = Files.walk(unfinished)) {
      left = all.sorted(Comparator.reverseOrder()).toList();
    }
    for (Path one : left) {
      Files.deleteIfExists(one);
    }
  }
}
