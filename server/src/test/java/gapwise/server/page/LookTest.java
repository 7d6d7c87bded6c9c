package gapwise.server.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * The style sheet has the tokens that docs/look.md describes, each with the value written there,
 * and the pairs of colours that it names can be read.
 */
class LookTest {
  private static final Path DOCUMENT = Path.of("../docs/look.md");
  private static final Pattern CODE = Pattern.compile("`([^`]+)`");
  private static final Pattern DEFINITION = Pattern.compile("(--[a-z0-9-]+): ([^;]+);");
  private static final Pattern COLOUR = Pattern.compile("#[0-9a-f]{6}");
  private static final String DARK = "@media screen and (prefers-color-scheme: dark) {";
  private static final String PHONE = "@media screen and (max-width: 45rem) {";

  private static String sheet() throws Exception {
    try (InputStream stream =
        LookTest.class.getResourceAsStream("/gapwise/server/assets/gapwise.css")) {
      return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  /** The tokens of the first block of the style sheet after some words. */
  private static Map<String, String> tokens(String after) throws Exception {
    String sheet = sheet();
    int from = sheet.indexOf(":root {", sheet.indexOf(after));
    Map<String, String> tokens = new TreeMap<>();
    DEFINITION
        .matcher(sheet.substring(from, sheet.indexOf('}', from)))
        .results()
        .forEach(one -> tokens.put(one.group(1), one.group(2)));
    return tokens;
  }

  /** What stands as code in each cell of the rows of tables that begin with a token. */
  private static List<List<List<String>>> rows() throws Exception {
    return Files.readAllLines(DOCUMENT).stream()
        .filter(line -> line.startsWith("| `--"))
        .map(
            line ->
                Stream.of(line.substring(1).split("\\|"))
                    .map(cell -> CODE.matcher(cell).results().map(one -> one.group(1)).toList())
                    .toList())
        .toList();
  }

  /** Rows that define a token, not pairs. */
  private static List<List<List<String>>> definitions() throws Exception {
    return rows().stream().filter(row -> !row.get(1).get(0).startsWith("--")).toList();
  }

  @Test
  void everyTokenWrittenDownIsInTheStyleSheetWithTheSameValueAndNoOther() throws Exception {
    Map<String, String> light = tokens("/* Tokens");
    Map<String, String> dark = tokens(DARK);
    Map<String, String> phone = tokens(PHONE);
    Set<String> described = new HashSet<>();
    for (List<List<String>> row : definitions()) {
      String token = row.get(0).get(0);
      described.add(token);
      String value = row.get(1).get(0);
      assertEquals(value, light.get(token), token);
      boolean colour = COLOUR.matcher(value).matches();
      List<String> second = row.get(2);
      if (colour) {
        assertEquals(second.get(0), dark.getOrDefault(token, value), token + " in dark");
      } else {
        assertEquals(
            second, phone.containsKey(token) ? List.of(phone.get(token)) : List.of(), token);
      }
    }
    Set<String> undescribed = new HashSet<>(light.keySet());
    undescribed.removeAll(described);
    undescribed.remove("--side"); // follows from the width
    assertEquals(Set.of(), undescribed);
    assertTrue(described.size() >= 30, described.toString());
  }

  @Test
  void noColourIsWrittenOutsideTheTokens() throws Exception {
    String sheet = sheet();
    String rules = sheet.substring(sheet.indexOf("*, *::before"), sheet.indexOf("@media print"));
    assertEquals(List.of(), COLOUR.matcher(rules).results().map(one -> one.group()).toList());
  }

  @Test
  void everyPairThatIsNamedCanBeReadInLightAndInDark() throws Exception {
    Map<String, String> light = tokens("/* Tokens");
    Map<String, String> dark = new TreeMap<>(light);
    dark.putAll(tokens(DARK));
    List<String> tooNear = new ArrayList<>();
    int pairs = 0;
    for (List<List<String>> row : rows()) {
      if (row.get(1).get(0).startsWith("--")) {
        String ground = row.get(0).get(0);
        for (Map<String, String> theme : List.of(light, dark)) {
          for (int kind = 1; kind <= 2; kind++) {
            double least = kind == 1 ? 4.5 : 3;
            for (String text : row.get(kind)) {
              pairs++;
              double contrast = contrast(theme.get(text), theme.get(ground));
              if (!(contrast >= least)) {
                tooNear.add(text + " on " + ground + ": " + contrast);
              }
            }
          }
        }
      }
    }
    assertEquals(List.of(), tooNear);
    assertTrue(pairs >= 38, pairs + " pairs");
  }

  /**
   * Black on white has the contrast 21, the largest there is; grey #767676 on white 4.54, as the
   * understanding document of WCAG 2.2, 1.4.3, has it (from memory).
   */
  @Test
  void contrastIsThatOfTheGuidelines() {
    assertEquals(21, contrast("#000000", "#ffffff"), 1e-12);
    assertEquals(4.54, contrast("#767676", "#ffffff"), 0.005);
  }

  /** (L1 + 0.05) / (L2 + 0.05), WCAG 2.2, definition of contrast ratio. */
  private static double contrast(String one, String other) {
    double a = luminance(one);
    double b = luminance(other);
    return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
  }

  /** WCAG 2.2, definition of relative luminance. */
  private static double luminance(String colour) {
    double[] weights = {0.2126, 0.7152, 0.0722};
    double sum = 0;
    for (int i = 0; i < weights.length; i++) {
      double share = Integer.parseInt(colour.substring(1 + 2 * i, 3 + 2 * i), 16) / 255.0;
      sum +=
          weights[i] * (share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4));
    }
    return sum;
  }
}
