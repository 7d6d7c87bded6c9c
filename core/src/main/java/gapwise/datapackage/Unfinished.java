package gapwise.datapackage;

import gapwise.store.OwnerOnly;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;

/** The name under which something is written that is not there yet. */
final class Unfinished {
  private Unfinished() {}

  /**
   * A name beside the target that nothing has, in a folder that is there.
   *
   * @throws FileAlreadyExistsException when there is the target already
   */
  static Path beside(Path target) throws IOException {
    if (Files.exists(target)) {
      throw new FileAlreadyExistsException(target.toString());
    }
    Path folder = Objects.requireNonNull(target.getParent(), "a file lies in a folder");
    OwnerOnly.folders(folder);
    String name = target.getFileName() + "." + ProcessHandle.current().pid();
    Path free = folder.resolve(name + ".unfinished");
    for (int number = 2; Files.exists(free); number++) {
      free = folder.resolve(name + "-" + number + ".unfinished");
    }
    return free;
  }
}
