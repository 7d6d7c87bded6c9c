package gapwise.server;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.Test;

/**
 * docs/third-parties.md names exactly what is shipped. The build writes the list of what goes into
 * the folder beside the jar before tests are run.
 */
class ThirdPartiesTest {
  private static final Path PAGE = Path.of("../docs/third-parties.md");
  private static final Path SHIPPED = Path.of("target/runtime-dependencies.txt");
  private static final Pattern DEPENDENCY =
      Pattern.compile("\\s*([\\w.-]+:[\\w.-]+):jar:([\\w.-]+):(?:compile|runtime):(\\S+).*");
  private static final Pattern LICENCE_TEXT = Pattern.compile("(.*/)?LICEN[SC]E(\\.(txt|md))?");

  /** A licence that stands nowhere here is read by a person before it is added. */
  private static final Set<String> ACCEPTED =
      Set.of(
          "0BSD",
          "Apache-2.0",
          "BSD-2-Clause",
          "BSD-3-Clause",
          "EPL-2.0 or Apache-2.0",
          "EPL-2.0 or GPL-2.0 with Classpath exception",
          "EPL-2.0 or LGPL-2.1",
          "LGPL-2.1",
          "MIT",
          "MPL-2.0",
          "OFL-1.1 and MPL-2.0");

  private record Line(
      String library, String version, String licence, String textInside, String usedFor) {
    String named() {
      return library + " " + version;
    }
  }

  @Test
  void everyShippedJarStandsOnThePageWithItsVersionAndNoOther() throws IOException {
    assertEquals(
        shipped().keySet(),
        new TreeSet<>(lines("Beside the jar").stream().map(Line::named).toList()));
  }

  @Test
  void thePageSaysTruthfullyWhetherTheTextOfTheLicenceIsInside() throws IOException {
    Map<String, Path> jars = shipped();
    for (Line line : lines("Beside the jar")) {
      assertEquals(holdsLicence(jars.get(line.named())), line.textInside(), line.named());
    }
  }

  @Test
  void everyLicenceIsOneThatWasLookedAt() throws IOException {
    List<Line> all = new ArrayList<>(lines("Beside the jar"));
    all.addAll(lines("In the pages"));
    all.addAll(lines("For tests only, never shipped"));
    for (Line line : all) {
      assertTrue(ACCEPTED.contains(line.licence()), line.named() + ": " + line.licence());
      assertTrue(!line.usedFor().isEmpty(), line.named());
    }
  }

  @Test
  void theScriptOfThePagesIsOfTheVersionNamedAndBringsItsLicence() throws IOException {
    List<Line> scripts = lines("In the pages");
    assertEquals(1, scripts.size());
    String library = "/META-INF/resources/webjars/htmx.org";
    for (String file : List.of("/dist/htmx.min.js", "/LICENSE")) {
      // inside our jar without its version, in that of its makers with it
      assertArrayEquals(
          bytes(library + "/" + scripts.get(0).version() + file), bytes(library + file), file);
    }
  }

  private byte[] bytes(String resource) throws IOException {
    try (InputStream stream = getClass().getResourceAsStream(resource)) {
      assertNotNull(stream, resource);
      return stream.readAllBytes();
    }
  }

  @Test
  void theScriptOfTheTestsIsOfTheVersionNamed() throws IOException {
    List<Line> scripts = lines("For tests only, never shipped");
    assertEquals(1, scripts.size());
    String jar = "selenium-" + scripts.get(0).version() + ".jar";
    assertTrue(
        List.of(System.getProperty("java.class.path").split(File.pathSeparator)).stream()
            .anyMatch(path -> path.contains("axe-core") && path.endsWith(jar)),
        jar + " is not what the tests use");
  }

  private static Map<String, Path> shipped() throws IOException {
    Map<String, Path> jars = new TreeMap<>();
    for (String line : Files.readAllLines(SHIPPED)) {
      Matcher dependency = DEPENDENCY.matcher(line);
      if (dependency.matches() && !dependency.group(1).startsWith("gapwise:")) {
        jars.put(dependency.group(1) + " " + dependency.group(2), Path.of(dependency.group(3)));
      }
    }
    assertTrue(!jars.isEmpty(), SHIPPED + " names nothing");
    return jars;
  }

  private static String holdsLicence(Path jar) throws IOException {
    try (ZipFile zip = new ZipFile(jar.toFile())) {
      boolean found =
          zip.stream().anyMatch(entry -> LICENCE_TEXT.matcher(entry.getName()).matches());
      return found ? "yes" : "no";
    }
  }

  private static List<Line> lines(String heading) throws IOException {
    List<Line> lines = new ArrayList<>();
    boolean inside = false;
    for (String text : Files.readAllLines(PAGE)) {
      if (text.startsWith("## ")) {
        inside = text.equals("## " + heading);
      } else if (inside && text.startsWith("| ") && text.contains(":")) {
        String[] cells = text.substring(2).split(" ?\\|\\s*");
        lines.add(new Line(cells[0], cells[1], cells[2], cells[3], cells[4]));
      }
    }
    assertTrue(!lines.isEmpty(), "no line below " + heading);
    return lines;
  }
}
