package gapwise.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.testing.GuideCommands;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every command of docs/guide/evidence-out-and-in.md does what the page says, in its order. */
class EvidenceOutAndInGuideTest {
  @TempDir private Path folder;

  @BeforeEach
  void fill() {
    GuideCommands.fill(folder.resolve("FOLDER"));
  }

  /** What a command printed on either stream, and its exit code. */
  private record Called(int exit, String said) {}

  /** In a process of its own, which starts elsewhere and has another home of its user. */
  private Called elsewhere(String command) throws Exception {
    Path away = Files.createDirectories(folder.resolve("away"));
    List<String> line = new ArrayList<>();
    line.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    line.addAll(
        List.of("-Duser.home=" + away, "-cp", absoluteClassPath(), "gapwise.server.Gapwise"));
    line.addAll(List.of(arguments(command)));
    Path said = Files.createTempFile(folder, "said", ".txt");
    Process process =
        new ProcessBuilder(line)
            .directory(away.toFile())
            .redirectErrorStream(true)
            .redirectOutput(said.toFile())
            .start();
    int exit = process.waitFor();
    return new Called(exit, Files.readString(said, StandardCharsets.UTF_8));
  }

  private static String absoluteClassPath() {
    List<String> parts = new ArrayList<>();
    for (String part : System.getProperty("java.class.path").split(File.pathSeparator)) {
      parts.add(Path.of(part).toAbsolutePath().toString());
    }
    return String.join(File.pathSeparator, parts);
  }

  @Test
  void theCommandsOfThePageWorkAndASupplementRunsAgainInAnotherProcess() throws Exception {
    List<String> commands = GuideCommands.of("evidence-out-and-in.md");
    assertEquals(
        List.of("export", "import", "supplement", "rerun"),
        commands.stream().map(command -> command.split(" ")[0]).toList());
    for (String command : commands.subList(0, 3)) {
      assertEquals(0, Gapwise.commandLine().execute(arguments(command)), command);
    }
    assertEquals(
        0, Gapwise.commandLine().execute(arguments("export --package PACKAGE-AGAIN --home NEW")));
    assertSameFiles(folder.resolve("PACKAGE"), folder.resolve("PACKAGE-AGAIN"));
    delete(folder.resolve("FOLDER"));
    delete(folder.resolve("NEW"));
    Path carried = Files.createDirectories(folder.resolve("away")).resolve("carried");
    Files.move(folder.resolve("SUPPLEMENT"), carried);
    Called again = elsewhere("rerun " + carried);
    assertEquals(0, again.exit(), again.said());
    assertTrue(again.said().contains("numbers compared: all equal."), again.said());
    Path outcomes = carried.resolve("data/outcomes.csv");
    String text = Files.readString(outcomes);
    Files.writeString(outcomes, text.replaceFirst("bony union in 1", "bony union in 2"));
    assertFalse(text.equals(Files.readString(outcomes)));
    Called spoilt = elsewhere("rerun " + carried);
    assertEquals(2, spoilt.exit(), spoilt.said());
    assertTrue(spoilt.said().contains("data/outcomes.csv: Its checksum"), spoilt.said());
  }

  @Test
  void everyOutcomeGoesIntoOneArchiveAndPlansOfOnesOwnIntoAnother() throws Exception {
    Path plans = Files.createDirectory(folder.resolve("plans"));
    Files.writeString(
        plans.resolve("rows.csv"), "study,events,total\nFirst,9,10\nSecond,17,20\nThird,12,15\n");
    Files.writeString(
        plans.resolve("own.json"),
        "{\"measure\":\"proportion\",\"source\":{\"table\":\"rows.csv\"}}");
    for (String command :
        List.of(
            "supplement --home FOLDER --all --to all.zip",
            "rerun all.zip --to RESULTS",
            "supplement --home FOLDER --plans plans/own.json --to own.zip",
            "rerun own.zip")) {
      assertEquals(0, Gapwise.commandLine().execute(arguments(command)), command);
    }
    assertTrue(Files.exists(folder.resolve("RESULTS/01-union.json")));
    assertEquals(2, Gapwise.commandLine().execute(arguments("rerun plans/own.json")), "no package");
    assertEquals(
        2,
        Gapwise.commandLine()
            .execute(
                arguments("supplement --home FOLDER --question outcome=nothing --to none.zip")));
    assertFalse(Files.exists(folder.resolve("none.zip")));
  }

  private static void assertSameFiles(Path one, Path two) throws IOException {
    try (var all = Files.list(one)) {
      for (Path file : all.toList()) {
        assertEquals(-1, Files.mismatch(file, two.resolve(file.getFileName())), file.toString());
      }
    }
  }

  private static void delete(Path of) throws IOException {
    try (var all = Files.walk(of)) {
      for (Path one : all.sorted(java.util.Comparator.reverseOrder()).toList()) {
        Files.delete(one);
      }
    }
  }

  private String[] arguments(String command) {
    return command
        .replaceAll(
            "(?<![\\w/])(FOLDER|NEW|PACKAGE-AGAIN|PACKAGE|SUPPLEMENT|RESULTS|all\\.zip|own\\.zip|none\\.zip|plans/own\\.json)\\b",
            folder + "/$1")
        .split(" ");
  }
}
