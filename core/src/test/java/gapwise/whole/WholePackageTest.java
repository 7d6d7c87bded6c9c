package gapwise.whole;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.datapackage.DataPackageVersion1;
import gapwise.datapackage.PackageReader;
import gapwise.datapackage.PackageWriter;
import gapwise.exchange.Import;
import gapwise.exchange.Imported;
import gapwise.problem.WrongInputException;
import gapwise.store.DocumentStore;
import gapwise.store.DocumentVersion;
import gapwise.store.Write;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A whole base goes into a package and comes back as it was; a spoilt one changes nothing. */
class WholePackageTest {
  private static final Clock CLOCK = Clock.fixed(FilledBase.NOW, ZoneOffset.UTC);
  private static final JsonMapper JSON = JsonMapper.builder().build();

  @TempDir Path folder;
  private Path written;
  private List<DocumentVersion> before;

  @BeforeEach
  void write() throws IOException {
    written = folder.resolve("written");
    try (DocumentStore store = open("from")) {
      FilledBase.fill(store);
      before = history(store);
      WholeWriter.Written done = new WholeWriter(store, "test").write(written);
      assertEquals(11, done.studies());
      assertEquals(before.size(), done.changes());
    }
  }

  private DocumentStore open(String name) {
    return DocumentStore.open(folder.resolve(name), CLOCK);
  }

  private static List<DocumentVersion> history(DocumentStore store) {
    List<DocumentVersion> all = new ArrayList<>();
    store.changesAfter(0, all::add);
    return all;
  }

  private static void restore(Path from, DocumentStore into) throws IOException {
    try (PackageReader reader = PackageReader.open(from)) {
      assertTrue(WholePackage.checked(reader).restoreInto(into).isPresent());
    }
  }

  @Test
  void anEmptyBaseHasTheSameHistoryAndGivesTheSameBytesAgain() throws IOException {
    Path again = folder.resolve("again");
    try (DocumentStore store = open("into")) {
      restore(written, store);
      assertEquals(before, history(store));
      assertTrue(store.soundnessCheck().run().orElseThrow().isSound());
      new WholeWriter(store, "test").write(again);
      Write next = Write.put("study", before.get(0).id().key(), "{}").expecting(1);
      assertEquals(List.of(), store.write(List.of(next), "bo", "goes on").conflicts());
    }
    for (String file : files(written)) {
      assertArrayEquals(
          Files.readAllBytes(written.resolve(file)), Files.readAllBytes(again.resolve(file)), file);
    }
    assertEquals(files(written), files(again));
  }

  @Test
  void anArchiveOfTheSameBaseIsTheSameBytesAndComesBack() throws IOException {
    Path one = folder.resolve("one.zip");
    Path two = folder.resolve("two.zip");
    try (DocumentStore store = open("from")) {
      new WholeWriter(store, "test").write(one);
      new WholeWriter(store, "test").write(two);
    }
    assertArrayEquals(Files.readAllBytes(one), Files.readAllBytes(two));
    try (DocumentStore store = open("into")) {
      restore(one, store);
      assertEquals(before, history(store));
    }
  }

  @Test
  void itsDescriptorIsRightByVersion1OfTheStandard() throws IOException {
    DataPackageVersion1.assertValid(
        JSON.readTree(Files.readString(written.resolve(PackageWriter.DESCRIPTOR))));
  }

  @Test
  void itsSheetsReadAsTheStudiesThatStand() throws IOException {
    try (PackageReader reader = PackageReader.open(written)) {
      WholePackage whole = WholePackage.checked(reader);
      Imported read = Import.read(whole.sheets(), Set.of(), rows -> {});
      assertFalse(read instanceof Imported.Wrong, read::toString);
      assertEquals(11, whole.studies());
    }
  }

  @Test
  void aBaseThatHoldsChangesIsLeftAsItIs() throws IOException {
    try (DocumentStore store = open("into");
        PackageReader reader = PackageReader.open(written)) {
      store.write(List.of(Write.put("study", "S1", "{}")), "ann", "there before");
      assertTrue(WholePackage.checked(reader).restoreInto(store).isEmpty());
      assertEquals(1, store.lastChange());
    }
  }

  @Test
  void everyFileWithABitChangedIsRefusedByName() throws IOException {
    for (String file : files(written)) {
      Path spoilt = copy(file + "-spoilt");
      byte[] bytes = Files.readAllBytes(spoilt.resolve(file));
      if (bytes.length > 0) {
        bytes[bytes.length / 2] ^= 1;
        Files.write(spoilt.resolve(file), bytes);
        WrongInputException wrong = refused(spoilt);
        assertTrue(
            file.equals(PackageWriter.DESCRIPTOR) || wrong.problems().get(0).where().equals(file),
            () -> file + ": " + wrong.problems());
      }
    }
  }

  @Test
  void aFileThatIsGoneOrCutOffIsRefused() throws IOException {
    Path gone = copy("gone");
    Files.delete(gone.resolve("arms.csv"));
    assertEquals("file-missing", code(refused(gone)));
    Path cut = copy("cut");
    byte[] bytes = Files.readAllBytes(cut.resolve("history.jsonl"));
    Files.write(cut.resolve("history.jsonl"), java.util.Arrays.copyOf(bytes, bytes.length / 2));
    assertEquals("file-changed", code(refused(cut)));
  }

  /** Whoever spoils a history may have mended the checksums of the file. */
  @Test
  void aHistoryThatDoesNotHoldTogetherIsRefusedEvenUnderItsOwnChecksum() throws IOException {
    assertEquals("history-gap", code(refused(withHistory(lines -> without(lines, 3)))));
    assertEquals(
        "history-short", code(refused(withHistory(lines -> without(lines, before.size())))));
    assertEquals(
        "unknown-kind",
        code(refused(withHistory(lines -> lines.replaceFirst("\"study\"", "\"spaceship\"")))));
    assertEquals(
        "content-changed",
        code(
            refused(
                withHistory(lines -> lines.replaceFirst("\\\\\"arms\\\\\"", "\\\\\"armz\\\\\"")))));
    WrongInputException unreadable =
        refused(
            withHistory(
                lines ->
                    lines.replaceFirst(
                        "(?m)\"sha256\":\"[0-9a-f]+\",\"content\":.*\\}$",
                        "\"sha256\":\"" + HistoryLines.sha256("[1]") + "\",\"content\":\"[1]\"}")));
    assertEquals("content-unreadable", code(unreadable));
    assertEquals(before.get(0).id().key(), unreadable.problems().get(0).about());
    assertEquals(
        "no-history-line", code(refused(withHistory(lines -> lines.replace("Ann", " \",")))));
    assertEquals(
        "no-history-line",
        code(refused(withHistory(lines -> lines.replaceFirst("2031-02-03", "2031-02-33")))));
  }

  @Test
  void aPackageOfANewerProgramOrOfSomethingElseIsRefused() throws IOException {
    Path newer = copy("newer");
    change(newer, text -> text.replace("\"form\" : 1", "\"form\" : 2"));
    assertEquals("package-newer", code(refused(newer)));
    Path other = copy("other");
    change(other, text -> text.replace("\"evidence-base\"", "\"supplement\""));
    assertEquals("no-evidence-base", code(refused(other)));
  }

  private static String code(WrongInputException wrong) {
    return wrong.problems().get(0).code();
  }

  private WrongInputException refused(Path spoilt) throws IOException {
    try (DocumentStore store = open("into-" + spoilt.getFileName())) {
      WrongInputException wrong =
          assertThrows(WrongInputException.class, () -> restore(spoilt, store), spoilt::toString);
      assertEquals(0, store.lastChange());
      return wrong;
    }
  }

  private static String without(String lines, int number) {
    List<String> all = new ArrayList<>(lines.lines().toList());
    all.remove(number - 1);
    return String.join("\n", all) + "\n";
  }

  private int copies;

  private Path withHistory(UnaryOperator<String> change) throws IOException {
    Path spoilt = copy("history-" + ++copies);
    Path file = spoilt.resolve("history.jsonl");
    String before = Files.readString(file);
    String after = change.apply(before);
    assertFalse(before.equals(after), "nothing was changed");
    Files.writeString(file, after);
    ObjectNode root =
        (ObjectNode) JSON.readTree(Files.readString(spoilt.resolve("datapackage.json")));
    ObjectNode history = (ObjectNode) root.path("resources").get(0);
    history.put("bytes", after.getBytes(UTF_8).length);
    history.put("hash", "sha256:" + HistoryLines.sha256(after));
    Files.writeString(spoilt.resolve("datapackage.json"), root.toString());
    return spoilt;
  }

  private static void change(Path spoilt, UnaryOperator<String> change) throws IOException {
    Path file = spoilt.resolve("datapackage.json");
    String before = Files.readString(file);
    String after = change.apply(before);
    assertFalse(before.equals(after), "nothing was changed");
    Files.writeString(file, after);
  }

  private Path copy(String name) throws IOException {
    Path copy = Files.createDirectory(folder.resolve(name));
    for (String file : files(written)) {
      Files.copy(written.resolve(file), copy.resolve(file));
    }
    return copy;
  }

  private static List<String> files(Path of) throws IOException {
    try (var all = Files.list(of)) {
      return all.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }
}
