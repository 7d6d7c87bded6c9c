package gapwise.supplement;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.budget.Budget;
import gapwise.datapackage.DataPackageVersion1;
import gapwise.datapackage.PackageReader;
import gapwise.problem.WrongInputException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A supplement of the invented demonstration base runs again to the same numbers. */
class SupplementTest {
  private static final JsonMapper JSON = JsonMapper.builder().build();
  private static final String VERSION = DemonstrationSupplement.VERSION;

  @TempDir static Path folder;
  private static DemonstrationSupplement demonstration;
  private static Path written;

  @BeforeAll
  static void write() throws IOException {
    demonstration = DemonstrationSupplement.in(folder);
    written = folder.resolve("written");
    SupplementWriter.Written done = demonstration.write(written);
    assertEquals(6, done.analyses());
    assertTrue(done.numbers() > 500, () -> "numbers: " + done.numbers());
  }

  @AfterAll
  static void close() {
    demonstration.close();
  }

  private static Rerun.Done rerun(Path supplement, String version) throws IOException {
    try (PackageReader reader = PackageReader.open(supplement)) {
      return Rerun.of(reader, version, Budget.UNLIMITED);
    }
  }

  @Test
  void everyNumberComesOutAgain() throws IOException {
    Rerun.Done done = rerun(written, VERSION);
    assertTrue(done.equal(), () -> done.analyses().toString());
    assertTrue(done.sameProgram() && done.invented());
    assertEquals(6, done.analyses().size());
    assertTrue(done.numbers() > 500);
  }

  @Test
  void anArchiveIsTheSameBytesAndRunsAgain() throws IOException {
    Path one = folder.resolve("one.zip");
    Path two = folder.resolve("two.zip");
    demonstration.write(one);
    demonstration.write(two);
    assertArrayEquals(Files.readAllBytes(one), Files.readAllBytes(two));
    assertTrue(rerun(one, VERSION).equal());
  }

  @Test
  void anotherVersionOfTheProgramIsTold() throws IOException {
    Rerun.Done done = rerun(written, "another");
    assertFalse(done.sameProgram());
    assertEquals(VERSION, done.program());
    assertTrue(done.equal());
  }

  @Test
  void itsDescriptorIsRightByVersion1OfTheStandardAndItSaysThatStudiesAreInvented()
      throws IOException {
    DataPackageVersion1.assertValid(
        JSON.readTree(Files.readString(written.resolve("datapackage.json"))));
    String readme = Files.readString(written.resolve("README.txt"));
    assertTrue(readme.contains("invented for demonstration"), readme);
    assertTrue(readme.contains("03-time-to-union"), readme);
    for (String file :
        List.of(
            "figures/01-primary-union-forest.svg",
            "figures/04-by-size-figure.png",
            "tables/01-primary-union-forest.csv",
            "methods/05-funnel.txt",
            "plans/06-own/rows.csv",
            "citations/studies.ris",
            "citations/methods.bib",
            "data/versions.csv")) {
      assertTrue(Files.size(written.resolve(file)) > 0, file);
    }
  }

  @Test
  void aDigitChangedInTheDataIsToldByFile() throws IOException {
    Path spoilt = copy("digit");
    change(spoilt.resolve("data/outcomes.csv"), SupplementTest::otherEvents);
    WrongInputException wrong =
        assertThrows(WrongInputException.class, () -> rerun(spoilt, VERSION));
    assertEquals("data/outcomes.csv", wrong.problems().get(0).where());
  }

  /** Whoever changes a digit may mend the checksum too: then the numbers tell. */
  @Test
  void aDigitChangedInTheDataUnderItsOwnChecksumIsToldByTheNumbersThatMove() throws IOException {
    Path spoilt = copy("number");
    change(spoilt.resolve("data/outcomes.csv"), SupplementTest::otherEvents);
    mendChecksum(spoilt, "data/outcomes.csv");
    Rerun.Done done = rerun(spoilt, VERSION);
    assertFalse(done.equal());
    List<Difference> moved = done.analyses().stream().flatMap(one -> one.moved().stream()).toList();
    assertTrue(
        moved.stream().anyMatch(one -> one.field().endsWith("estimate")), () -> moved.toString());
    assertTrue(moved.stream().noneMatch(one -> one.before().equals(one.after())));
  }

  @Test
  void aResultChangedUnderItsOwnChecksumIsToldFieldByField() throws IOException {
    Path spoilt = copy("result");
    Path file = spoilt.resolve("results/06-own.json");
    JsonNode result = JSON.readTree(Files.readString(file));
    ((ObjectNode) result.path("summary")).put("estimate", 1.5);
    Files.writeString(file, result.toString());
    mendChecksum(spoilt, "results/06-own.json");
    Rerun.Done done = rerun(spoilt, VERSION);
    List<Difference> moved = done.analyses().get(5).moved();
    assertEquals(
        List.of("summary.estimate", "1.5"), List.of(moved.get(0).field(), moved.get(0).before()));
    assertFalse(done.equal());
    assertEquals(1, moved.size());
  }

  @Test
  void whatIsNoSupplementIsToldInWords() throws IOException {
    Path other = copy("other");
    change(
        other.resolve("datapackage.json"), text -> text.replace("\"supplement\"", "\"something\""));
    assertEquals(
        "no-supplement",
        assertThrows(WrongInputException.class, () -> rerun(other, VERSION))
            .problems()
            .get(0)
            .code());
    Path newer = copy("newer");
    change(newer.resolve("datapackage.json"), text -> text.replace("\"form\" : 1", "\"form\" : 9"));
    assertEquals(
        "package-newer",
        assertThrows(WrongInputException.class, () -> rerun(newer, VERSION))
            .problems()
            .get(0)
            .code());
  }

  @Test
  void nothingToAnalyseIsRefusedAndLeavesNothing() {
    Path none = folder.resolve("none");
    SupplementWriter.Wish empty =
        new SupplementWriter.Wish("None", List.of(), List.of(), Optional.empty(), List.of());
    assertThrows(WrongInputException.class, () -> demonstration.writer().write(none, empty));
    assertFalse(Files.exists(none));
  }

  /** The first count of events in the sheet becomes another. */
  private static String otherEvents(String sheet) {
    List<String> lines = new ArrayList<>(sheet.lines().toList());
    List<String> heads = List.of(lines.get(0).split(","));
    int events = heads.indexOf("events");
    int outcome = heads.indexOf("outcome");
    for (int i = 2; i < lines.size(); i++) {
      String[] cells = lines.get(i).split(",", -1);
      if (cells.length > events
          && cells[outcome].equals("primary-union")
          && cells[events].matches("[2-9]|\\d\\d")) {
        cells[events] = Integer.toString(Integer.parseInt(cells[events]) - 1);
        lines.set(i, String.join(",", cells));
        return String.join("\r\n", lines) + "\r\n";
      }
    }
    throw new AssertionError("no events of primary union stand in the sheet");
  }

  private static void change(Path file, UnaryOperator<String> change) throws IOException {
    String before = Files.readString(file);
    String after = change.apply(before);
    assertFalse(before.equals(after), "nothing was changed");
    Files.writeString(file, after);
  }

  private static void mendChecksum(Path spoilt, String path) throws IOException {
    Path descriptor = spoilt.resolve("datapackage.json");
    ObjectNode root = (ObjectNode) JSON.readTree(Files.readString(descriptor));
    byte[] bytes = Files.readAllBytes(spoilt.resolve(path));
    for (JsonNode resource : root.path("resources")) {
      if (resource.path("path").asText().equals(path)) {
        ((ObjectNode) resource).put("bytes", bytes.length).put("hash", "sha256:" + sha256(bytes));
      }
    }
    Files.writeString(descriptor, root.toString());
  }

  private static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (java.security.NoSuchAlgorithmException missing) {
      throw new AssertionError(missing);
    }
  }

  private static Path copy(String name) throws IOException {
    Path copy = folder.resolve("copy-" + name);
    try (var all = Files.walk(written)) {
      for (Path one : all.toList()) {
        Path target = copy.resolve(written.relativize(one).toString());
        if (Files.isDirectory(one)) {
          Files.createDirectories(target);
        } else {
          Files.copy(one, target);
        }
      }
    }
    return copy;
  }
}
