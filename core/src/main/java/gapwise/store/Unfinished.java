package gapwise.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A file that is being written under a name that says so, such as {@code
 * monday.db.4711-1.unfinished}. What a killed run left under such a name is deleted by the next one
 * that writes into the folder.
 */
final class Unfinished implements AutoCloseable {
  private static final Pattern NAME =
      Pattern.compile(".+\\.(\\d{1,18})-\\d{1,18}\\.unfinished(-journal|-wal|-shm)?");
  private static final AtomicLong COUNT = new AtomicLong();
  private static final Set<Path> BEING_WRITTEN = ConcurrentHashMap.newKeySet();

  private final Path file;

  private Unfinished(Path file) {
    this.file = file;
  }

  /** A new empty file beside the one that it will become. */
  static Unfinished of(Path target) throws IOException {
    Path folder = OwnerOnly.folderOf(target);
    deleteLeftOver(folder);
    Path file =
        folder.resolve(
            "%s.%d-%d.unfinished"
                .formatted(
                    target.getFileName(), ProcessHandle.current().pid(), COUNT.incrementAndGet()));
    BEING_WRITTEN.add(file);
    OwnerOnly.fileIfAbsent(file);
    return new Unfinished(file);
  }

  private static void deleteLeftOver(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.toList()) {
        Matcher name = NAME.matcher(file.getFileName().toString());
        if (name.matches()
            && isLeftOver(file, Long.parseLong(name.group(1)))
            && Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
          Files.deleteIfExists(file);
        }
      }
    }
  }

  /** Numbers of processes come again: one of this run's own number may be of an earlier run. */
  private static boolean isLeftOver(Path file, long process) {
    return process == ProcessHandle.current().pid()
        ? BEING_WRITTEN.stream().noneMatch(own -> file.toString().startsWith(own.toString()))
        : ProcessHandle.of(process).isEmpty();
  }

  Path file() {
    return file;
  }

  /** Deletes it where it has not been moved to its own name. */
  @Override
  public void close() throws IOException {
    Files.deleteIfExists(file);
    for (String beside : List.of("-journal", "-wal", "-shm")) {
      Files.deleteIfExists(file.resolveSibling(file.getFileName() + beside));
    }
    BEING_WRITTEN.remove(file);
  }
}
