package gapwise.demonstration;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.fail;

import gapwise.evidence.Study;
import gapwise.exchange.Export;
import gapwise.exchange.Import;
import gapwise.exchange.Imported;
import gapwise.exchange.Warning;
import gapwise.table.TableFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The files that are handed out are those that the generator writes, and they read back whole. */
class DemonstrationFilesTest {
  private static final Path ROOT = Path.of("..");
  private static final Path HANDED_OUT = ROOT.resolve("data-templates/demonstration");
  private static final Path PAGE = ROOT.resolve("docs/demonstration.md");

  @TempDir Path fresh;

  @Test
  void theCsvFilesAreWhatTheGeneratorWrites() throws IOException {
    DemonstrationFiles.write(fresh);
    for (String sheet : Export.sheets()) {
      assertArrayEquals(
          Files.readAllBytes(fresh.resolve(sheet + ".csv")),
          Files.readAllBytes(HANDED_OUT.resolve(sheet + ".csv")),
          sheet + ".csv differs; write it anew with the command in docs/demonstration.md");
    }
  }

  @Test
  void theWorkbookReadsBackAsTheGeneratedStudies() {
    assertEquals(DemonstrationEvidence.studies(), studies(workbook()));
  }

  @Test
  void theCsvFilesReadBackAsTheGeneratedStudies() {
    assertEquals(DemonstrationEvidence.studies(), studies(csvFiles()));
  }

  @Test
  void thePageExplainsEveryDoubtThatTheImportRaises() throws IOException {
    Set<String> raised = new TreeSet<>();
    read(workbook(), Set.of()).warnings().forEach(warning -> raised.add(warning.problem().code()));
    Set<String> listed = new TreeSet<>();
    String page = Files.readString(PAGE);
    int start = page.indexOf("## Doubts");
    String section = page.substring(start, page.indexOf("\n## ", start));
    section
        .lines()
        .filter(line -> line.startsWith("| `"))
        .forEach(line -> listed.add(line.substring(3, line.indexOf('`', 3))));
    raised.removeAll(listed);
    assertEquals(Set.of(), raised, "doubts that docs/demonstration.md does not explain");
  }

  private static List<TableFile> workbook() {
    return List.of(TableFile.of(HANDED_OUT.resolve(DemonstrationFiles.WORKBOOK)));
  }

  private static List<TableFile> csvFiles() {
    return Export.sheets().stream()
        .map(sheet -> TableFile.of(HANDED_OUT.resolve(sheet + ".csv")))
        .toList();
  }

  private static Imported read(List<TableFile> files, Set<String> acknowledged) {
    return Import.read(files, acknowledged, rows -> {});
  }

  /** The studies after all doubts are acknowledged; a problem fails the test in words. */
  private static List<Study> studies(List<TableFile> files) {
    Set<String> doubts =
        read(files, Set.of()).warnings().stream().map(Warning::key).collect(Collectors.toSet());
    Imported imported = read(files, doubts);
    if (imported instanceof Imported.Ready ready) {
      return ready.studies();
    }
    if (imported instanceof Imported.Wrong wrong) {
      return fail("problems: " + wrong.problems());
    }
    return fail("doubts stayed open although all were acknowledged");
  }
}
