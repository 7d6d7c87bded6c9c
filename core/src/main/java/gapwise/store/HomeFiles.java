package gapwise.store;

import gapwise.store.database.Database;
import gapwise.store.database.DatabaseFile;
import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** What lies in a home, and that its owner alone can read it. */
record HomeFiles(Path home) {
  /** Folders of other rooms within the home; all in them is the program's. */
  private static final Set<String> FOLDERS = Set.of("index", "uploads");

  /** The database; where its name is a link, the file that it names. */
  Path database() throws IOException {
    Path file = home.resolve(Database.FILE);
    return Files.exists(file) ? file.toRealPath() : file;
  }

  /** Whether the name of the database is a link to a file that is not there. */
  boolean isDatabaseElsewhere() {
    Path file = home.resolve(Database.FILE);
    return Files.isSymbolicLink(file) && !Files.exists(file);
  }

  /** Whether the folder ever was a home, as far as can be seen. */
  boolean isHome() {
    Path file = home.resolve(Database.FILE);
    return Files.exists(file)
        || Files.isSymbolicLink(file)
        || Files.exists(DatabaseFile.log(file))
        || Files.exists(home.resolve(HomeMarker.FILE));
  }

  /**
   * Takes from others than the owner what they may do with the program's own files, and with the
   * folder where nothing else lies in it.
   *
   * @return sentences about what stays open to others
   */
  List<String> tighten() throws IOException {
    List<Path> own = new ArrayList<>();
    boolean alone = true;
    try (Stream<Path> files = Files.list(home)) {
      for (Path file : files.toList()) {
        if (isOwn(file.getFileName().toString())) {
          addAll(file, own);
        } else {
          alone = false;
        }
      }
    }
    List<String> told = new ArrayList<>();
    if (alone) {
      own.add(home);
    } else if (OwnerOnly.isOpenToOthers(home)) {
      told.add(
          "The folder "
              + home
              + " can be listed by others than its owner and was left so, for it holds other files"
              + " too. The program's own files in it are its owner's alone.");
    }
    List<Path> open = own.stream().filter(file -> !tightened(file)).toList();
    if (!open.isEmpty()) {
      told.add(
          "Others than the owner may read "
              + open.get(0)
              + (open.size() == 1 ? "" : " and " + (open.size() - 1) + " more files")
              + ", and that could not be changed. Take the right to read from them, as the owner of"
              + " the files.");
    }
    return told;
  }

  private static boolean isOwn(String name) {
    return name.startsWith(Database.FILE)
        || name.equals(HomeMarker.FILE)
        || name.equals(HomeLock.FILE)
        || FOLDERS.contains(name);
  }

  /** The file, or a folder with all in it; within a folder links are not followed. */
  private static void addAll(Path path, List<Path> all) throws IOException {
    if (!Files.isDirectory(path)) {
      all.add(path);
      return;
    }
    // The folder itself may be a link to another disk.
    Files.walkFileTree(
        path.toRealPath(),
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
            all.add(folder);
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
            if (attributes.isRegularFile()) {
              all.add(file);
            }
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFileFailed(Path file, IOException gone) {
            return FileVisitResult.CONTINUE;
          }
        });
  }

  /** Whether it is its owner's alone now; so is what is not there any more. */
  private static boolean tightened(Path file) {
    try {
      OwnerOnly.tighten(file);
      return true;
    } catch (IOException refused) {
      return !Files.exists(file);
    }
  }
}
