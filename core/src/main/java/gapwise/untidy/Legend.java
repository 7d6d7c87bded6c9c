package gapwise.untidy;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What lines around a table say of signs in it: "orange = infected", "Group A: transport". */
final class Legend {
  private static final Pattern ENTRY = Pattern.compile("([^=:;]{1,30}?)\\s*[=:]\\s*([^=;]{2,80})");

  /** Names of colours and the part of the colour circle, in degrees, that people call so. */
  private static final Map<String, int[]> HUES =
      Map.of(
          "red", new int[] {345, 375},
          "orange", new int[] {15, 45},
          "yellow", new int[] {45, 70},
          "green", new int[] {70, 165},
          "blue", new int[] {170, 260},
          "purple", new int[] {260, 320},
          "pink", new int[] {300, 360});

  private final Map<String, String> entries = new HashMap<>();

  Legend(List<GridCell> lines) {
    for (GridCell line : lines) {
      for (String part : line.text().split(";|, (?=[^,=:]{1,20} ?[=:])", -1)) {
        Matcher entry = ENTRY.matcher(part.strip());
        if (entry.matches()) {
          entries.put(Words.folded(entry.group(1)), entry.group(2).strip());
        }
      }
    }
  }

  /** What the legend says of a word or name. */
  Optional<String> of(String words) {
    return Optional.ofNullable(entries.get(Words.folded(words)));
  }

  /** What the legend says of a colour; where several of its colours could be meant, none. */
  Optional<String> ofColour(String fill) {
    List<String> meanings = new ArrayList<>();
    entries.forEach(
        (name, meaning) -> {
          if (isCalled(fill, name.toLowerCase(Locale.ROOT))) {
            meanings.add(meaning);
          }
        });
    return meanings.size() == 1 ? Optional.of(meanings.get(0)) : Optional.empty();
  }

  private static boolean isCalled(String fill, String name) {
    int[] hues =
        HUES.entrySet().stream()
            .filter(hue -> name.contains(hue.getKey()))
            .map(Map.Entry::getValue)
            .findFirst()
            .orElse(new int[0]);
    if (hues.length == 0) {
      return false;
    }
    if (!fill.matches("[0-9A-F]{6}")) {
      return true;
    }
    float[] hsb =
        java.awt.Color.RGBtoHSB(
            Integer.parseInt(fill.substring(0, 2), 16),
            Integer.parseInt(fill.substring(2, 4), 16),
            Integer.parseInt(fill.substring(4, 6), 16),
            null);
    float hue = hsb[0] * 360;
    return hsb[1] > 0.1
        && (hue >= hues[0] && hue <= hues[1] || hue + 360 >= hues[0] && hue + 360 <= hues[1]);
  }
}
