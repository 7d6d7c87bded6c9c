package gapwise.server.testing;

import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.server.home.Home;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;

/** The commands that a page of the guide gives, and a home that they can be tried on. */
public final class GuideCommands {
  private static final Path GUIDE = Path.of("..", "docs", "guide");
  private static final String PROGRAM = "java -jar server/target/gapwise.jar ";

  private GuideCommands() {}

  /** The commands of a page in their order, without the program. */
  public static List<String> of(String page) throws IOException {
    List<String> commands = new ArrayList<>();
    boolean inside = false;
    for (String line : Files.readAllLines(GUIDE.resolve(page))) {
      if (line.startsWith("```")) {
        inside = line.equals("```sh");
      } else if (inside) {
        assertTrue(line.startsWith(PROGRAM), line);
        commands.add(line.substring(PROGRAM.length()));
      }
    }
    return commands;
  }

  /** A home with the sixteen series of {@link Invented}. */
  public static void fill(Path home) {
    try (Home open = Home.open(home, Clock.systemUTC())) {
      open.base().saveAll(Invented.studies().iterator(), "reviewer", "for a test", List.of());
    }
  }
}
