package gapwise.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.Study;
import gapwise.table.TableFile;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A hundred thousand rows of outcomes and patients fit into 512 MB of heap, with progress told. How
 * fast they are read depends on what else the machine does, so no time is held here; half an hour
 * only ends a run that hangs.
 */
@Timeout(value = 30, unit = TimeUnit.MINUTES)
class LargeImportTest {
  private static final int STUDIES = 1000;
  private static final int ROWS_EACH = 50;
  private static final Pattern EXPECTED =
      Pattern.compile("studies 1000 outcomes 50000 patients 50000 rows (\\d+) told (\\d+)");

  @Test
  void aHundredThousandRowsAreReadFromCsvFilesAndFromAWorkbookIn512Megabytes(@TempDir Path folder)
      throws IOException, InterruptedException {
    LargeImport.write(folder, STUDIES, ROWS_EACH);
    List<Path> csv =
        Export.sheets().stream()
            .map(sheet -> folder.resolve(sheet + ".csv"))
            .filter(Files::exists)
            .toList();
    assertReadWhole(start(csv));
    Path workbook = folder.resolve("large.xlsx");
    try (OutputStream target = Files.newOutputStream(workbook)) {
      Export.workbook(studies(csv), target);
    }
    assertReadWhole(start(List.of(workbook)));
  }

  /** Every row was read, and progress told at least once for every thousand. */
  private static void assertReadWhole(String printed) {
    Matcher matched = EXPECTED.matcher(printed);
    assertTrue(matched.matches(), printed);
    assertTrue(Long.parseLong(matched.group(1)) >= 102_000, printed);
    assertTrue(Long.parseLong(matched.group(2)) >= 102, printed);
  }

  private static List<Study> studies(List<Path> files) {
    Imported read = Import.read(files.stream().map(TableFile::of).toList(), Set.of(), rows -> {});
    return ((Imported.Ready) read).studies();
  }

  /** Runs the import in a process of its own and gives what it prints. */
  private static String start(List<Path> files) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-Xmx512m", "-cp", System.getProperty("java.class.path")));
    command.add(LargeImport.class.getName());
    files.forEach(file -> command.add(file.toString()));
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String printed =
        new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
    assertEquals(0, process.waitFor(), printed);
    return printed;
  }
}
