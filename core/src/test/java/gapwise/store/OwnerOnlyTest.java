package gapwise.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Who may read what a home holds: its owner, on systems that know owners. */
class OwnerOnlyTest {
  private static final Clock CLOCK = Clock.systemUTC();

  @TempDir Path folder;
  private Path home;

  @BeforeEach
  void onlyWhereThereAreOwners() {
    assumeTrue(FileSystems.getDefault().supportedFileAttributeViews().contains("posix"));
    home = folder.resolve("base/home");
  }

  @Test
  void aNewHomeAndAllThatIsWrittenIntoItAreTheOwnersAlone() throws IOException {
    try (DocumentStore store = DocumentStore.open(home, CLOCK)) {
      store.write(List.of(Write.put("study", "A", "{}")), "ann", "test");
      Map<String, String> found = permissions(home);
      assertEquals("rwx------", found.remove(""));
      assertTrue(
          found
              .keySet()
              .containsAll(
                  List.of(
                      "gapwise.db",
                      "gapwise.db-wal",
                      "gapwise.db-shm",
                      "gapwise.lock",
                      "gapwise.home")),
          found::toString);
      found.forEach((file, permissions) -> assertEquals("rw-------", permissions, file));
      Path backup = folder.resolve("copies/b.db");
      Backup.write(home, backup);
      assertEquals(Map.of("", "rwx------", "b.db", "rw-------"), permissions(backup.getParent()));
    }
    Path restored = folder.resolve("restored");
    Restore.of(folder.resolve("copies/b.db"), restored, CLOCK);
    permissions(restored)
        .forEach(
            (file, permissions) ->
                assertEquals(file.isEmpty() ? "rwx------" : "rw-------", permissions, file));
  }

  @Test
  void aHomeThatOthersCouldReadIsTightenedWhenItIsOpened() throws IOException {
    DocumentStore.open(home, CLOCK).close();
    Path index = Files.createDirectories(home.resolve("index/deep"));
    Files.writeString(index.resolve("_0.cfs"), "words of the records");
    loosen();
    DocumentStore.open(home, CLOCK).close();
    permissions(home)
        .forEach(
            (file, permissions) -> assertEquals("------", permissions.substring(3), "of " + file));
  }

  @Test
  void whatTheOwnerMayNotDoIsNotGiven() throws IOException {
    DocumentStore.open(home, CLOCK).close();
    Path kept = Files.writeString(home.resolve("gapwise.db.replaced-x"), "");
    Files.setPosixFilePermissions(kept, PosixFilePermissions.fromString("r--r--r--"));
    DocumentStore.open(home, CLOCK).close();
    assertEquals("r--------", permissions(home).get("gapwise.db.replaced-x"));
  }

  @Test
  void aFolderThatHoldsOtherFilesIsLeftAndThatIsSaid() throws IOException {
    DocumentStore.open(home, CLOCK).close();
    Files.writeString(home.resolve("letter.txt"), "for all");
    loosen();
    try (DocumentStore store = DocumentStore.open(home, CLOCK)) {
      assertEquals(1, store.notices().size());
      assertTrue(store.notices().get(0).contains("other files"), store.notices()::toString);
    }
    Map<String, String> found = permissions(home);
    assertEquals("rwxr-xr-x", found.get(""));
    assertEquals("rw-r--r--", found.get("letter.txt"));
    assertEquals("rw-------", found.get("gapwise.db"));
  }

  @Test
  void linksWithinTheHomeAreNotFollowedButItsOwnFilesAre() throws IOException {
    DocumentStore.open(home, CLOCK).close();
    Path outside = Files.createDirectory(folder.resolve("outside"));
    Path strange = Files.writeString(outside.resolve("letter.txt"), "for all");
    Path records = outside.resolve("records.db");
    Files.move(home.resolve("gapwise.db"), records);
    Files.createSymbolicLink(home.resolve("gapwise.db"), records);
    Files.createSymbolicLink(
        Files.createDirectories(home.resolve("index")).resolve("letter"), strange);
    Files.setPosixFilePermissions(strange, PosixFilePermissions.fromString("rw-r--r--"));
    Files.setPosixFilePermissions(records, PosixFilePermissions.fromString("rw-r--r--"));
    Path link = Files.createSymbolicLink(folder.resolve("link"), home);
    DocumentStore.open(link, CLOCK).close();
    assertEquals(
        "rw-r--r--", PosixFilePermissions.toString(Files.getPosixFilePermissions(strange)));
    assertEquals(
        "rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(records)));
  }

  private void loosen() throws IOException {
    try (Stream<Path> files = Files.walk(home)) {
      for (Path file : files.toList()) {
        String words = Files.isDirectory(file) ? "rwxr-xr-x" : "rw-r--r--";
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString(words));
      }
    }
  }

  private static Map<String, String> permissions(Path folder) throws IOException {
    Map<String, String> found = new TreeMap<>();
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.toList()) {
        found.put(
            folder.relativize(file).toString(),
            PosixFilePermissions.toString(Files.getPosixFilePermissions(file)));
      }
    }
    return found;
  }
}
