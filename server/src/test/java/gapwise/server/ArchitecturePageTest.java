package gapwise.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The walks in docs/architecture.md lead through classes and methods that exist. */
class ArchitecturePageTest {
  private static final Path PAGE = Path.of("..", "docs", "architecture.md");
  private static final int FEWER_STOPS_THAN = 10;

  /** A stop: its number, its class below {@code gapwise}, its method. */
  private static final Pattern STOP =
      Pattern.compile("^\\d+\\. `([a-z.]+[A-Z]\\w*)\\.([a-z]\\w*)`: .+");

  @Test
  void fourWalksAreTold() throws IOException {
    assertEquals(4, walks().size(), () -> "headings with numbered stops in " + PAGE);
  }

  @TestFactory
  List<DynamicTest> everyWalkIsShort() throws IOException {
    return walks().entrySet().stream()
        .map(
            walk ->
                DynamicTest.dynamicTest(
                    walk.getKey(),
                    () -> {
                      int stops = walk.getValue().size();
                      assertTrue(stops > 1 && stops < FEWER_STOPS_THAN, () -> stops + " stops");
                    }))
        .toList();
  }

  @TestFactory
  List<DynamicTest> everyStopExists() throws IOException {
    List<DynamicTest> tests = new ArrayList<>();
    walks()
        .forEach(
            (title, stops) ->
                stops.forEach(
                    stop ->
                        tests.add(DynamicTest.dynamicTest(title + ": " + stop, () -> find(stop)))));
    return tests;
  }

  private static void find(String stop) throws ClassNotFoundException {
    Matcher read = STOP.matcher(stop);
    assertTrue(read.matches(), "a stop reads '1. `room.Class.method`: what is done there'");
    Class<?> type = Class.forName("gapwise." + read.group(1));
    assertTrue(
        Stream.of(type.getDeclaredMethods())
            .anyMatch(method -> method.getName().equals(read.group(2))),
        () -> type.getName() + " has no method " + read.group(2));
  }

  /** The numbered lines under each heading. */
  private static Map<String, List<String>> walks() throws IOException {
    Map<String, List<String>> walks = new LinkedHashMap<>();
    List<String> stops = new ArrayList<>();
    for (String line : Files.readAllLines(PAGE)) {
      if (line.startsWith("## ")) {
        stops = new ArrayList<>();
        walks.put(line.substring("## ".length()), stops);
      } else if (!line.isEmpty() && Character.isDigit(line.charAt(0))) {
        stops.add(line);
      }
    }
    return walks;
  }
}
