package gapwise.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.home.Home;
import gapwise.server.testing.GuideCommands;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every command of docs/guide/backup.md does what the page says, in the order of the page. */
class BackupGuideTest {
  @TempDir private Path folder;

  @Test
  void theCommandsOfThePageWork() throws Exception {
    Path home = folder.resolve("FOLDER");
    GuideCommands.fill(home);
    List<String> commands = GuideCommands.of("backup.md");
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

  private String[] arguments(String command) {
    return command
        .replace("$(date +%F)", "2026-03-01")
        .replaceAll("\\b(FOLDER|BACKUPS|TRIAL)\\b", folder + "/$1")
        .split(" ");
  }
}
