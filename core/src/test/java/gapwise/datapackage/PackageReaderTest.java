package gapwise.datapackage;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.problem.WrongInputException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What was written is read as it was; what was made to harm is told in words. */
class PackageReaderTest {
  private static final JsonMapper JSON = JsonMapper.builder().build();

  /** SHA-256 of "abc", from the examples of FIPS 180-4. */
  private static final String ABC =
      "sha256:ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

  @TempDir Path folder;

  private static ObjectNode resource(String name, String path) {
    return JSON.createObjectNode().put("name", name).put("path", path);
  }

  private static ObjectNode head() {
    return JSON.createObjectNode().put("name", "words");
  }

  private Path written(String name) throws IOException {
    Path target = folder.resolve(name);
    try (PackageWriter writer = PackageWriter.into(target)) {
      writer.addText(resource("abc", "data/abc.txt"), "abc");
      writer.addText(resource("none", "none.txt"), "");
      writer.finish(head());
    }
    return target;
  }

  @ParameterizedTest
  @ValueSource(strings = {"folder", "archive.zip"})
  void filesComeBackWithTheirSizesAndHashes(String name) throws IOException {
    try (PackageReader reader = PackageReader.open(written(name))) {
      reader.check();
      assertEquals(head(), reader.head());
      PackagedFile abc = reader.file("data/abc.txt").orElseThrow();
      assertEquals(3, abc.bytes());
      assertEquals(ABC, "sha256:" + abc.sha256());
      try (InputStream in = reader.read(abc)) {
        assertEquals("abc", new String(in.readAllBytes(), UTF_8));
      }
      assertTrue(reader.file("abc.txt").isEmpty());
    }
  }

  @Test
  void equalFilesAreEqualBytesAndNothingIsWrittenOver() throws IOException {
    assertArrayEquals(
        Files.readAllBytes(written("one.zip")), Files.readAllBytes(written("two.zip")));
    assertThrows(FileAlreadyExistsException.class, () -> written("one.zip"));
    DataPackageVersion1.assertValid(
        JSON.readTree(written("folder").resolve(PackageWriter.DESCRIPTOR).toFile()));
  }

  @ParameterizedTest
  @ValueSource(strings = {"folder", "archive.zip"})
  void whatIsNotFinishedLeavesNothing(String name) throws IOException {
    assertThrows(
        IOException.class,
        () -> {
          try (PackageWriter writer = PackageWriter.into(folder.resolve(name))) {
            writer.addText(resource("abc", "data/abc.txt"), "abc");
            writer.add(
                resource("full", "full.txt"),
                target -> {
                  throw new IOException("no room");
                });
          }
        });
    try (var left = Files.list(folder)) {
      assertEquals(List.of(), left.toList());
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "../abc.txt",
        "/etc/passwd",
        "a/../../b",
        ".hidden",
        "a//b",
        "a\\\\b",
        "http://example.org/a.csv",
        "a/b/c/d/e/f/g",
        ""
      })
  void aPathThatLeavesThePackageIsRefused(String path) throws IOException {
    Files.writeString(folder.resolve("datapackage.json"), describing(path, 3, ABC));
    assertEquals("no-file-of-a-package", code(folder));
  }

  @ParameterizedTest
  @ValueSource(strings = {"sha256:12", "md5:900150983cd24fb0d6963f7d28e17f72", ""})
  void aFileWithoutAHashOfItsOwnIsRefused(String hash) throws IOException {
    Files.writeString(folder.resolve("abc.txt"), "abc");
    Files.writeString(folder.resolve("datapackage.json"), describing("abc.txt", 3, hash));
    assertEquals("no-file-of-a-package", code(folder));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "[]", "{\"resources\":[", "{\"resources\":{}}", "{\"a\":1,\"a\":1}"})
  void whatIsNoDescriptorIsToldInWords(String text) throws IOException {
    Files.writeString(folder.resolve("datapackage.json"), text);
    assertEquals("no-descriptor", code(folder));
  }

  @Test
  void whatIsNoPackageIsToldInWords() throws IOException {
    assertEquals("no-descriptor", code(Files.createDirectory(folder.resolve("empty"))));
    assertEquals("no-package", code(folder.resolve("none.zip")));
    assertEquals("no-package", code(Files.writeString(folder.resolve("letter.zip"), "a letter")));
  }

  @Test
  void aLinkThatLeadsOutOfTheFolderIsNotFollowed() throws IOException {
    Path outside = Files.writeString(folder.resolve("outside.txt"), "abc");
    Path inside = Files.createDirectory(folder.resolve("inside"));
    Files.createSymbolicLink(inside.resolve("abc.txt"), outside);
    Files.writeString(inside.resolve("datapackage.json"), describing("abc.txt", 3, ABC));
    assertEquals("file-missing", code(inside));
  }

  /** A file that unfolds to a hundred megabytes is left at its fourth byte. */
  @Test
  void anArchiveThatUnfoldsWithoutEndIsLeftWhereItIsLongerThanItSays() throws IOException {
    Path bomb = folder.resolve("bomb.zip");
    try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(bomb))) {
      entry(zip, "datapackage.json", describing("abc.txt", 3, ABC).getBytes(UTF_8), 1);
      entry(zip, "abc.txt", new byte[1_000_000], 100);
    }
    assertTrue(Files.size(bomb) < 1_000_000);
    try (PackageReader reader = PackageReader.open(bomb)) {
      WrongInputException wrong = assertThrows(WrongInputException.class, reader::check);
      assertTrue(wrong.problems().get(0).message().startsWith("It is longer than the 3 bytes"));
    }
  }

  @Test
  void aDescriptorThatUnfoldsWithoutEndIsRefused() throws IOException {
    Path bomb = folder.resolve("bomb.zip");
    try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(bomb))) {
      entry(zip, "datapackage.json", new byte[1_000_000], 100);
    }
    assertEquals("descriptor-too-long", code(bomb));
  }

  private static void entry(ZipOutputStream zip, String name, byte[] bytes, int times)
      throws IOException {
    zip.putNextEntry(new ZipEntry(name));
    OutputStream target = zip;
    for (int i = 0; i < times; i++) {
      target.write(bytes);
    }
    zip.closeEntry();
  }

  private static String describing(String path, int bytes, String hash) {
    ObjectNode root = head();
    root.putArray("resources").add(resource("abc", path).put("bytes", bytes).put("hash", hash));
    return root.toString();
  }

  private static String code(Path of) throws IOException {
    WrongInputException wrong =
        assertThrows(
            WrongInputException.class,
            () -> {
              try (PackageReader reader = PackageReader.open(of)) {
                reader.check();
              }
            });
    assertFalse(wrong.problems().isEmpty());
    return wrong.problems().get(0).code();
  }
}
