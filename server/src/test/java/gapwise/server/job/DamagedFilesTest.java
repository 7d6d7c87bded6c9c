package gapwise.server.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.exchange.Export;
import gapwise.problem.Problem;
import gapwise.server.cli.Failure;
import gapwise.server.cli.ImportCommand;
import gapwise.server.home.Home;
import gapwise.server.testing.Invented;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;

/**
 * Files spoilt in many ways, by page and by command: every one gets an answer in words, none breaks
 * the import off, and what is not right leaves the base as it was. More of them: {@code
 * -Dspoilt=400}.
 */
@Timeout(300)
class DamagedFilesTest {
  private static final int FILES_A_SEED = Integer.getInteger("spoilt", 12);

  @TempDir Path folder;

  /** A file by its name. */
  private record Named(String name, byte[] bytes) {
    ImportJobs.Upload upload() {
      return new ImportJobs.Upload(name, bytes.length, new ByteArrayInputStream(bytes));
    }
  }

  private static byte[] workbook() throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    Export.workbook(Invented.studies().subList(0, 3), bytes);
    return bytes.toByteArray();
  }

  private static Named csv(String sheet) throws IOException {
    StringBuilder text = new StringBuilder();
    Export.csv(Invented.studies().subList(0, 3), sheet, text);
    return new Named(sheet + ".csv", text.toString().getBytes(StandardCharsets.UTF_8));
  }

  /** One import: a workbook, a workbook whose parts are spoilt, CSV files, or JSON. */
  private List<Named> spoiltFiles(Random random) throws IOException {
    int kind = random.nextInt(4);
    if (kind == 0) {
      return List.of(new Named("filled.xlsx", spoilt(workbook(), random)));
    }
    if (kind == 1) {
      return List.of(new Named("filled.xlsx", withSpoiltPart(workbook(), random)));
    }
    if (kind == 2) {
      byte[] json =
          "{\"studies\":[{\"id\":\"a\",\"n\":[1,2,{\"x\":null}]}]}"
              .getBytes(StandardCharsets.UTF_8);
      String name = List.of("studies.json", "studies.csv", "filled.xlsx").get(random.nextInt(3));
      return List.of(new Named(name, random.nextBoolean() ? json : spoilt(json, random)));
    }
    List<Named> files = new ArrayList<>();
    for (String sheet : List.of("studies", "arms", "outcomes")) {
      Named sound = csv(sheet);
      files.add(
          random.nextInt(3) == 0 ? sound : new Named(sound.name(), spoilt(sound.bytes(), random)));
    }
    return files;
  }

  private static byte[] spoilt(byte[] sound, Random random) {
    byte[] bytes = sound.clone();
    int at = random.nextInt(bytes.length);
    switch (random.nextInt(5)) {
      case 0 -> {
        for (int count = 1 + random.nextInt(30); count > 0; count--) {
          bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
        }
        return bytes;
      }
      case 1 -> {
        return Arrays.copyOf(bytes, at);
      }
      case 2 -> {
        return twice(bytes, at);
      }
      case 3 -> {
        byte[] odd =
            "\"\0\uFEFF\r=1+1,\u2028,9e999,NaN,-0,\uD83E\uDDB4,".getBytes(StandardCharsets.UTF_8);
        System.arraycopy(
            odd,
            0,
            bytes,
            Math.min(at, Math.max(0, bytes.length - odd.length)),
            Math.min(odd.length, bytes.length));
        return bytes;
      }
      default -> {
        return new String(bytes, StandardCharsets.ISO_8859_1).getBytes(StandardCharsets.UTF_16);
      }
    }
  }

  private static byte[] twice(byte[] bytes, int from) {
    byte[] longer = Arrays.copyOf(bytes, bytes.length + bytes.length - from);
    System.arraycopy(bytes, from, longer, bytes.length, bytes.length - from);
    return longer;
  }

  /** The same workbook, with one part of its archive spoilt. */
  private byte[] withSpoiltPart(byte[] workbook, Random random) throws IOException {
    Path sound = Files.write(folder.resolve("sound.xlsx"), workbook);
    ByteArrayOutputStream again = new ByteArrayOutputStream();
    int which = random.nextInt(12);
    try (ZipFile parts = new ZipFile(sound.toFile());
        ZipOutputStream written = new ZipOutputStream(again)) {
      int number = 0;
      for (ZipEntry part : Collections.list(parts.entries())) {
        byte[] bytes = parts.getInputStream(part).readAllBytes();
        written.putNextEntry(new ZipEntry(part.getName()));
        written.write(number++ == which && bytes.length > 0 ? spoilt(bytes, random) : bytes);
        written.closeEntry();
      }
    }
    return again.toByteArray();
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void thePageAnswersInWordsAndStoresNothingHalf(long seed) throws IOException {
    Random random = new Random(seed);
    try (Home home = Home.open(folder.resolve("home"), Clock.systemUTC());
        ImportJobs jobs =
            new ImportJobs(home.base(), UploadFolder.prepared(folder.resolve("uploads")))) {
      for (int count = 0; count < FILES_A_SEED; count++) {
        long before = home.base().lastChange();
        List<Named> files = spoiltFiles(random);
        ImportJob job =
            jobs.start(
                files.stream().map(Named::upload).toList(), "tester", ImportJob.Agreed.NOTHING);
        ImportState state = settled(jobs, job);
        String told = "file " + count + ": " + state;
        assertFalse(state instanceof ImportState.Failed, told);
        if (state instanceof ImportState.Wrong wrong) {
          wrong.problems().stream().map(Problem::line).forEach(DamagedFilesTest::inWords);
        }
        if (!(state instanceof ImportState.Done)) {
          assertEquals(before, home.base().lastChange(), told);
        }
      }
    }
  }

  @Test
  void theCommandAnswersInWords() throws IOException {
    Random random = new Random(4);
    for (int count = 0; count < FILES_A_SEED; count++) {
      List<String> words = new ArrayList<>(List.of("--home", folder.resolve("home").toString()));
      for (Named file : spoiltFiles(random)) {
        Path written = Files.createDirectories(folder.resolve("files" + count));
        words.add(Files.write(written.resolve(file.name()), file.bytes()).toString());
      }
      ByteArrayOutputStream told = new ByteArrayOutputStream();
      PrintStream before = System.err;
      int exit;
      try (PrintStream err = new PrintStream(told, true, StandardCharsets.UTF_8)) {
        System.setErr(err);
        exit =
            new CommandLine(new ImportCommand())
                .setExecutionExceptionHandler(Failure::tell)
                .execute(words.toArray(String[]::new));
      } finally {
        System.setErr(before);
      }
      String said = told.toString(StandardCharsets.UTF_8);
      assertTrue(exit == 0 || exit == 2, exit + ": " + said);
      assertTrue(exit == 0 || said.contains("nothing was stored"), said);
      said.lines().forEach(DamagedFilesTest::inWords);
    }
  }

  /** No trace, no name of a class, nothing that says null. */
  private static void inWords(String line) {
    assertFalse(line.contains("Exception") || line.contains("\tat "), line);
    assertFalse(line.matches(".*\\bjava\\.(lang|util|io)\\..*|.*org\\.apache\\..*"), line);
    assertFalse(line.endsWith(": null") || line.isBlank() && !line.isEmpty(), line);
  }

  private static ImportState settled(ImportJobs jobs, ImportJob job) {
    while (!jobs.find(job.id()).orElseThrow().state().isSettled()) {
      Thread.onSpinWait();
    }
    return jobs.find(job.id()).orElseThrow().state();
  }
}
