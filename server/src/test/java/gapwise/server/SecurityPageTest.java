package gapwise.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What docs/security.md names as showing a requirement is there, under that name. */
class SecurityPageTest {
  private static final Path ROOT = Path.of("..");
  private static final Path PAGE = ROOT.resolve("docs/security.md");
  private static final Pattern NAMED = Pattern.compile("`([^`]+)`");

  private record Requirement(String number, String held, String how, String shownBy) {
    List<String> named() {
      return NAMED.matcher(shownBy).results().map(found -> found.group(1)).toList();
    }
  }

  @Test
  void everyRequirementStandsOnceAndSaysWhetherItIsHeld() throws IOException {
    List<String> numbers = new ArrayList<>();
    for (Requirement requirement : requirements()) {
      assertTrue(
          Set.of("yes", "partly", "no").contains(requirement.held()), requirement.toString());
      numbers.add(requirement.number());
    }
    assertEquals(numbers.stream().distinct().toList(), numbers);
  }

  @Test
  void whatIsHeldIsShownBySomething() throws IOException {
    for (Requirement requirement : requirements()) {
      if (requirement.held().equals("yes")) {
        assertTrue(!requirement.named().isEmpty(), requirement.number() + " is shown by nothing");
      }
    }
  }

  @Test
  void everyClassMethodAndFileNamedIsThere() throws IOException {
    Map<String, String> sources = sources();
    List<String> missing = new ArrayList<>();
    for (Requirement requirement : requirements()) {
      for (String name : requirement.named()) {
        if (!isThere(name, sources)) {
          missing.add(requirement.number() + ": " + name);
        }
      }
    }
    assertEquals(List.of(), missing);
  }

  private static boolean isThere(String name, Map<String, String> sources) {
    if (Files.exists(ROOT.resolve(name)) || sources.containsKey(name)) {
      return true;
    }
    String[] parts = name.split("\\.");
    String source =
        sources.getOrDefault(parts[0] + ".java", sources.getOrDefault(parts[0] + ".jte", ""));
    return !source.isEmpty() && (parts.length == 1 || source.contains(" " + parts[1] + "("));
  }

  private static List<Requirement> requirements() throws IOException {
    List<Requirement> all = new ArrayList<>();
    for (String line : Files.readAllLines(PAGE)) {
      Matcher row =
          Pattern.compile("\\| (\\d+\\.\\d+\\.\\d+) \\|[^|]*\\| ([^|]*) \\| ([^|]*) \\|(.*)\\|")
              .matcher(line);
      if (row.matches()) {
        all.add(new Requirement(row.group(1), row.group(2), row.group(3), row.group(4)));
      }
    }
    assertTrue(!all.isEmpty(), PAGE + " has no table of requirements");
    return all;
  }

  /** Every source of both modules by the name of its file. */
  private static Map<String, String> sources() throws IOException {
    Map<String, String> sources = new HashMap<>();
    for (String module : List.of("core", "server")) {
      try (Stream<Path> files = Files.walk(ROOT.resolve(module).resolve("src"))) {
        for (Path file : files.filter(Files::isRegularFile).toList()) {
          String name = file.getFileName().toString();
          boolean read = name.endsWith(".java") || name.endsWith(".jte");
          sources.put(name, read ? Files.readString(file) : "");
        }
      }
    }
    return sources;
  }
}
