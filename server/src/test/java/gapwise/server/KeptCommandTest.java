package gapwise.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.review.kept.Digest;
import gapwise.review.kept.DigestNumber;
import gapwise.review.kept.EvidenceState;
import gapwise.review.kept.KeptQuestion;
import gapwise.server.home.Home;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command that lists kept questions, beside whoever has the home open. */
class KeptCommandTest {
  private static final EvidenceState STATE = new EvidenceState(0, Optional.empty(), "0");

  private static String printed(int exit, Path home) {
    PrintStream out = System.out;
    ByteArrayOutputStream printed = new ByteArrayOutputStream();
    System.setOut(new PrintStream(printed, true, StandardCharsets.UTF_8));
    try {
      assertEquals(exit, Gapwise.commandLine().execute("kept", "--home", home.toString()));
    } finally {
      System.setOut(out);
    }
    return printed.toString(StandardCharsets.UTF_8);
  }

  @Test
  void theExitCodeTellsWhetherAllIsAsItWas(@TempDir Path folder) {
    Path path = folder.resolve("home");
    Digest nothing = new Digest(STATE, List.of(), List.of());
    KeptQuestion question =
        new KeptQuestion("00aa00aa00aa", "Union", "/pooled", "outcome=union", nothing);
    kept(path, question, 0);
    assertTrue(printed(0, path).startsWith("as-it-was\t00aa00aa00aa\tUnion\t/pooled?"));
    Digest some =
        new Digest(STATE, List.of(), List.of(new DigestNumber("All series", "", "9", "1 series")));
    kept(path, question.with(some), 1);
    assertTrue(printed(3, path).startsWith("numbers-moved\t"));
  }

  private static void kept(Path path, KeptQuestion question, int seen) {
    try (Home home = Home.open(path, Clock.systemUTC())) {
      assertTrue(home.keptQuestions().keep(question, "AB", "kept", seen));
    }
  }
}
