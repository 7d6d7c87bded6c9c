package gapwise.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.evidence.rule.Severity;
import gapwise.exchange.Warning;
import gapwise.problem.Problem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class NotedKindTest {
  private static final Path MAIN = Path.of("src", "main", "java", "gapwise");

  /** The code in a call that tells of something found: the first literal that is a code. */
  private static final Pattern CALL =
      Pattern.compile(
          "(?:impossible|doubtful|proposed|refuse|problems\\.add|add|new Problem|new UnreadableException)"
              + "\\((?:[^;]*?[(,]\\s*)??\"([a-z]+(?:-[a-z]+)+)\",\\s*[^)\\s]");

  private static Problem problem(String code, String where, String study) {
    return new Problem(where, code, "Found it.", study);
  }

  @Test
  void whatIsWrongComesFirstThenDoubtsEachKindOnceWithItsPlacesAndStudies() {
    List<NotedKind> kinds =
        NotedKind.of(
            List.of(problem("negative", "row 9", "s2")),
            List.of(
                new Warning("k1", problem("clock-missing", "row 2", "s1"), true),
                new Warning("k2", problem("skewed", "row 3", "s1"), true),
                new Warning("k3", problem("clock-missing", "row 4", "s2"), true)));
    assertEquals(
        List.of("negative", "clock-missing", "skewed"),
        kinds.stream().map(NotedKind::code).toList());
    assertEquals(Severity.IMPOSSIBLE, kinds.get(0).severity());
    assertEquals(Optional.empty(), kinds.get(0).all().get(0).key());
    NotedKind clocks = kinds.get(1);
    assertEquals(Severity.DOUBTFUL, clocks.severity());
    assertEquals("A time does not say from when it counts.", clocks.sentence());
    assertEquals(
        List.of("s1, row 2: Found it.", "s2, row 4: Found it."),
        clocks.all().stream().map(NotedKind.Noted::line).toList());
    assertEquals(
        List.of(Optional.of("k1"), Optional.of("k3")),
        clocks.all().stream().map(NotedKind.Noted::key).toList());
  }

  @Test
  void aKindThatHasNoSentenceOfItsOwnIsStillOne() {
    NotedKind kind = NotedKind.of(List.of(problem("long-row", "file x", "")), List.of()).get(0);
    assertFalse(kind.sentence().isBlank());
    assertEquals("file x: Found it.", kind.all().get(0).line());
  }

  @Test
  void everyCodeThatARuleOrTheReadingOfACellGivesHasASentence() throws IOException {
    Set<String> codes = new TreeSet<>();
    for (String room : List.of("evidence/check", "exchange")) {
      try (Stream<Path> files = Files.walk(MAIN.resolve(room))) {
        for (Path file : files.filter(path -> path.toString().endsWith(".java")).toList()) {
          Matcher call = CALL.matcher(Files.readString(file));
          while (call.find()) {
            codes.add(call.group(1));
          }
        }
      }
    }
    assertTrue(codes.size() > 80, "found " + codes);
    codes.removeIf(NotedKind::isWorded);
    assertEquals(Set.of(), codes);
  }
}
