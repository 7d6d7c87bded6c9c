package gapwise.supply;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DependencyChecksumsTest {
  /** SHA-256 of the three bytes "abc": FIPS 180-4, its example for one block. */
  private static final String HASH_OF_ABC =
      "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

  private static final String JAR = "org/example/thing/1.0/thing-1.0.jar";
  private static final String POM = "org/example/thing/1.0/thing-1.0.pom";

  @TempDir private Path folder;
  private Path list;
  private Path repository;
  private Path project;
  private DependencyChecksums checksums;

  @BeforeEach
  void aRepositoryOfOneLibrary() throws IOException {
    list = folder.resolve("list");
    repository = folder.resolve("repository");
    project = Files.createDirectories(folder.resolve("project"));
    put(JAR, "abc");
    put(POM, "<project/>");
    put("org/example/thing/1.0/_remote.repositories", "anything");
    put("gapwise/gapwise-core/0.1.0/gapwise-core-0.1.0.jar", "ours");
    checksums = new DependencyChecksums(list, repository);
    assertEquals(List.of(), checksums.write());
  }

  @Test
  void theListHoldsJarsAndProjectDescriptionsOfOthersInTheFormOfSha256sum() throws IOException {
    List<String> lines = Files.readAllLines(list);

    assertEquals(2, lines.size(), lines.toString());
    assertEquals(HASH_OF_ABC + "  " + JAR, lines.get(0));
    assertTrue(lines.get(1).endsWith("  " + POM), lines.get(1));
  }

  @Test
  void whatIsAsListedPasses() throws IOException {
    String ours =
        repository.resolve("gapwise/gapwise-core/0.1.0/gapwise-core-0.1.0.jar").toString();
    assertEquals(
        List.of(),
        check(repository.resolve(JAR).toString(), project.resolve("classes").toString(), ours));
  }

  @Test
  void aChangedJarIsNamedThoughNothingUsesItYet() throws IOException {
    put(JAR, "abd");

    List<String> faults = check(project.resolve("classes").toString());

    assertEquals(1, faults.size(), faults.toString());
    assertTrue(faults.get(0).startsWith("org.example:thing:1.0 (thing-1.0.jar): changed"));
    assertTrue(faults.get(0).contains(HASH_OF_ABC), faults.get(0));
  }

  @Test
  void aChangedProjectDescriptionIsNamed() throws IOException {
    put(POM, "<project><dependencies/></project>");

    List<String> faults = check(repository.resolve(JAR).toString());

    assertEquals(1, faults.size(), faults.toString());
    assertTrue(faults.get(0).startsWith("org.example:thing:1.0 (thing-1.0.pom): changed"));
  }

  @Test
  void aJarOnTheClassPathThatIsNotListedIsNamed() throws IOException {
    put("org/example/other/2.0/other-2.0.jar", "abc");

    assertEquals(
        List.of("org.example:other:2.0 (other-2.0.jar): not in the list of checksums"),
        check(repository.resolve("org/example/other/2.0/other-2.0.jar").toString()));
  }

  @Test
  void aJarFromElsewhereIsNamed() throws IOException {
    Path elsewhere = folder.resolve("elsewhere.jar");

    List<String> faults = check(elsewhere.toString());

    assertEquals(
        List.of(elsewhere + ": neither from the local repository nor of this project"), faults);
  }

  @Test
  void aListedFileThatIsNotFetchedYetIsNoFault() throws IOException {
    Files.delete(repository.resolve(JAR));

    assertEquals(List.of(), check(project.resolve("classes").toString()));
  }

  @Test
  void aVersionOnceListedIsNotGivenAnotherChecksum() throws IOException {
    List<String> before = Files.readAllLines(list);
    put(JAR, "abd");
    put("org/example/other/2.0/other-2.0.jar", "abc");

    List<String> faults = checksums.write();

    assertEquals(1, faults.size(), faults.toString());
    assertTrue(faults.get(0).startsWith("org.example:thing:1.0 (thing-1.0.jar): changed"));
    assertEquals(before, Files.readAllLines(list));
  }

  @Test
  void whatIsNoLongerUsedLeavesTheListWhenItIsWrittenAnew() throws IOException {
    Files.delete(repository.resolve(JAR));
    Files.delete(repository.resolve(POM));
    put("org/example/thing/1.1/thing-1.1.jar", "abc");

    assertEquals(List.of(), checksums.write());
    assertEquals(
        List.of(HASH_OF_ABC + "  org/example/thing/1.1/thing-1.1.jar"), Files.readAllLines(list));
  }

  private List<String> check(String... classPath) throws IOException {
    return checksums.check(project, String.join(File.pathSeparator, classPath));
  }

  private void put(String path, String content) throws IOException {
    Path file = repository.resolve(path);
    Files.createDirectories(file.getParent());
    Files.writeString(file, content);
  }
}
