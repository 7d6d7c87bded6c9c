package gapwise.server.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.decision.certainty.Level;
import gapwise.figure.drawing.Ink;
import gapwise.server.testing.ColourVision;
import gapwise.server.testing.SharedServer;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/**
 * The hundred marks of the sheet and the bars of certainty and fit, as people see them who lack a
 * kind of cone, and as grey printers give them.
 */
class ColourVisionTest {
  @RegisterExtension private static final SharedServer SERVER = SharedServer.withDemonstration();

  /** WCAG 2.2, criterion 1.4.11: what must be told apart to understand a drawing. */
  private static final double LEAST = 3;

  private static final String PAPER = "#ffffff";
  private static final Pattern TOKEN = Pattern.compile("(--[a-z-]+): (#[0-9a-f]{6});");

  private static final Pattern BAR =
      Pattern.compile(
          "<span class=\"level\"><svg[^>]*>(.*?)</svg>\\s*([a-z ]+?)\\s*<", Pattern.DOTALL);

  private static Map<String, String> tokens(String after) throws Exception {
    try (InputStream stream =
        ColourVisionTest.class.getResourceAsStream("/gapwise/server/assets/gapwise.css")) {
      String sheet = new String(stream.readAllBytes(), StandardCharsets.UTF_8);
      int from = sheet.indexOf(":root {", sheet.indexOf(after));
      Map<String, String> tokens = new TreeMap<>();
      TOKEN
          .matcher(sheet.substring(from, sheet.indexOf('}', from)))
          .results()
          .forEach(one -> tokens.put(one.group(1), one.group(2)));
      return tokens;
    }
  }

  private static void areTold(String one, String other, String what, List<String> alike) {
    for (ColourVision vision : ColourVision.values()) {
      double contrast = vision.contrast(one, other);
      if (!(contrast >= LEAST)) {
        alike.add(what + ", " + vision + ": " + contrast);
      }
    }
  }

  @Test
  void filledHatchedAndEmptyMarksAndTheBarAreToldApartByEverybody() {
    List<String> alike = new ArrayList<>();
    areTold(Ink.INK, PAPER, "filled marks and strokes on paper", alike);
    areTold(Ink.BONE_GREY, PAPER, "empty marks on paper", alike);
    areTold(Ink.INK, Ink.BONE_GREY, "filled and empty marks", alike);
    areTold(Ink.SOFT, PAPER, "edges of hatched marks on paper", alike);
    areTold(Ink.ACCENT, PAPER, "the bar of the number on paper", alike);
    assertEquals(List.of(), alike);
  }

  @Test
  void barsOfCertaintyAndFitAreToldApartByEverybodyInLightAndInDark() throws Exception {
    Map<String, String> light = tokens("/* Tokens");
    Map<String, String> dark = new TreeMap<>(light);
    dark.putAll(tokens("@media screen and (prefers-color-scheme: dark)"));
    List<String> alike = new ArrayList<>();
    for (Map<String, String> theme : List.of(light, dark)) {
      String paper = theme.get("--paper");
      areTold(theme.get("--ink"), paper, "filled steps on paper", alike);
      areTold(theme.get("--bone-edge"), paper, "at the edge on paper", alike);
    }
    assertEquals(List.of(), alike);
  }

  @Test
  void theLevelIsToldByTheNumberOfFilledStepsAndByItsWord() throws Exception {
    String table =
        SERVER
            .get("/compare/table?from=6&to=6&method=bone-transport&method=induced-membrane")
            .body();
    Map<String, Integer> steps = new TreeMap<>();
    for (MatchResult bar : BAR.matcher(table).results().toList()) {
      assertEquals(Level.values().length, bar.group(1).split("<rect", -1).length - 1);
      int filled = bar.group(1).split("class=\"on\"", -1).length - 1;
      assertEquals(filled, steps.merge(bar.group(2), filled, (before, now) -> now), bar.group(2));
    }
    assertTrue(steps.size() >= 2, steps.toString());
    for (Level level : Level.values()) {
      if (steps.containsKey(level.label())) {
        assertEquals(Level.values().length - level.ordinal(), steps.get(level.label()));
      }
    }
  }

  /**
   * Pure red and green of one luminance differ for most people and hardly without red or green
   * cones, whose luminance of red falls (Machado et al. 2009, by the matrix): white stays white.
   */
  @Test
  void theMatricesKeepWhiteAndDarkenRed() {
    for (ColourVision vision : ColourVision.values()) {
      assertEquals(21, vision.contrast("#000000", "#ffffff"), 0.01, vision.name());
    }
    assertTrue(
        ColourVision.NO_RED_CONES.contrast("#ff0000", "#ffffff")
            > ColourVision.USUAL.contrast("#ff0000", "#ffffff"));
  }
}
