package gapwise.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.home.Home;
import gapwise.server.testing.Invented;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every command of docs/guide/backup.md does what the page says, in the order of the page. */
class BackupGuideTest {
  private static final Path PAGE = Path.of("../docs/guide/backup.md");
  private static final String PROGRAM = "java -jar server/target/gapwise.jar ";

  @TempDir private Path folder;

  @Test
  void theCommandsOfThePageWork() throws Exception {
    Path home = folder.resolve("FOLDER");
    try (Home open = Home.open(home, Clock.systemUTC())) {
      open.base().saveAll(Invented.studies().iterator(), "reviewer", "for a test", List.of());
    }
    List<String> commands = commands();
    assertEquals(
        List.of("backup", "restore", "export", "restore"),
        commands.stream().map(command -> command.split(" ")[0]).toList());
    for (String command : commands) {
      assertEquals(0, Gapwise.commandLine().execute(arguments(command)), command);
    }
    assertTrue(Files.exists(folder.resolve("BACKUPS/2026-03-01.db")));
    assertTrue(Files.exists(folder.resolve("TRIAL.xlsx")));
    try (Home restored = Home.openExisting(home, Clock.systemUTC())) {
      assertEquals(17, restored.base().lastChange());
      assertTrue(restored.soundness().orElseThrow().isSound());
    }
  }

  private static List<String> commands() throws Exception {
    List<String> commands = new ArrayList<>();
    boolean inside = false;
    for (String line : Files.readAllLines(PAGE)) {
      if (line.startsWith("```")) {
        inside = line.equals("```sh");
      } else if (inside) {
        assertTrue(line.startsWith(PROGRAM), line);
        commands.add(line.substring(PROGRAM.length()));
      }
    }
    return commands;
  }

  private String[] arguments(String command) {
    return command
        .replace("$(date +%F)", "2026-03-01")
        .replaceAll("\\b(FOLDER|BACKUPS|TRIAL)\\b", folder + "/$1")
        .split(" ");
  }
}
