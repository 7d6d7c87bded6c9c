package gapwise.paper.trace;

import gapwise.paper.Box;
import gapwise.paper.DrawnPath;
import gapwise.paper.Line;
import gapwise.paper.trace.DrawnCurves.Curve;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** Which words in a figure name which curve: by colour, by the sample beside them, or by place. */
final class CurveNames {
  /** Words that stand in a figure and name no group. */
  private static final Pattern NO_NAME =
      Pattern.compile(
          "(?i).*\\b(p|hr|log[- ]?rank|ci|hazard|median)\\b.*[=<>:].*|.*\\bat risk\\b.*|[^\\p{L}]*");

  /** A sample of a line stands so near before its words, points. */
  private static final double SAMPLE_NEAR = 16;

  /** Names of groups are short. */
  private static final int MOST_WORDS = 8;

  private final PlotArea area;
  private final DrawnCurves drawn;
  private final List<AtRiskRow> rows;
  private final List<Line> words;

  CurveNames(PlotArea area, DrawnCurves drawn, List<AtRiskRow> rows) {
    this.area = area;
    this.drawn = drawn;
    this.rows = rows;
    Box around =
        new Box(
            area.box().left(),
            Math.max(0, area.box().top() - 14),
            Math.min(area.page().width(), area.box().right() + 130),
            area.box().bottom() - 1);
    this.words =
        area.level().stream().filter(l -> around.holdsMiddleOf(l.box()) && isName(l)).toList();
  }

  private boolean isName(Line line) {
    return line.words().size() <= MOST_WORDS
        && line.box().width() < 0.7 * area.box().width()
        && !NO_NAME.matcher(line.text()).matches();
  }

  /**
   * A name.
   *
   * @param sure whether colour or a sample tells, rather than mere order or place
   */
  record Name(String text, boolean sure) {}

  /** The names of all curves in their order. */
  List<Name> names() {
    List<Optional<Line>> told = new ArrayList<>();
    for (Curve curve : drawn.curves()) {
      told.add(bySample(curve).or(() -> byColour(curve)));
    }
    List<Name> names = new ArrayList<>();
    for (int i = 0; i < told.size(); i++) {
      Optional<Line> name = told.get(i);
      boolean twice =
          name.isPresent()
              && told.stream().filter(o -> o.isPresent() && o.get().equals(name.get())).count() > 1;
      if (name.isPresent() && !twice) {
        names.add(new Name(printed(name.get().text()), true));
      } else {
        names.add(new Name(byPlace(drawn.curves().get(i), told), false));
      }
    }
    return names;
  }

  private Optional<Line> bySample(Curve curve) {
    for (DrawnPath sample : drawn.samples()) {
      if (sample.looksLike(curve.look()) && distinct(sample)) {
        Box box = sample.box();
        for (Line line : words) {
          double gap = line.box().left() - box.right();
          boolean level = Math.abs(line.box().centre() - box.centre()) < 0.7 * line.size();
          if (gap > -2 && gap < SAMPLE_NEAR && level) {
            return Optional.of(line);
          }
        }
      }
    }
    return Optional.empty();
  }

  private boolean distinct(DrawnPath sample) {
    return drawn.curves().stream().filter(c -> c.look().looksLike(sample)).count() == 1;
  }

  private Optional<Line> byColour(Curve curve) {
    int colour = curve.look().colour();
    if (!distinct(curve.look())) {
      return Optional.empty();
    }
    List<Line> same =
        words.stream()
            .filter(l -> isColoured(colour) && l.words().get(0).colour() == colour)
            .toList();
    return same.size() == 1 ? Optional.of(same.get(0)) : Optional.empty();
  }

  private static boolean isColoured(int colour) {
    int red = colour >> 16 & 255;
    int green = colour >> 8 & 255;
    int blue = colour & 255;
    int most = Math.max(red, Math.max(green, blue));
    return most - Math.min(red, Math.min(green, blue)) > 24;
  }

  /** The words nearest to the curve that no other curve has. */
  private String byPlace(Curve curve, List<Optional<Line>> told) {
    String best = "";
    double nearest = 40;
    for (Line line : words) {
      boolean free = told.stream().noneMatch(t -> t.isPresent() && t.get().equals(line));
      double away = away(curve, line.box());
      boolean nearerToOther =
          drawn.curves().stream().anyMatch(c -> c != curve && away(c, line.box()) < away);
      if (free && !nearerToOther && away < nearest) {
        nearest = away;
        best = printed(line.text());
      }
    }
    return best;
  }

  private static double away(Curve curve, Box words) {
    double nearest = Double.MAX_VALUE;
    for (int i = 1; i < curve.points().size(); i++) {
      var a = curve.points().get(i - 1);
      var b = curve.points().get(i);
      Box piece = Box.between(a.x(), a.y(), b.x(), b.y());
      double x = Math.max(0, -piece.sharedWidth(words));
      double y = Math.max(0, -piece.sharedHeight(words));
      nearest = Math.min(nearest, Math.hypot(x, y));
    }
    return nearest;
  }

  /** The name as numbers at risk print it, where they do. */
  private String printed(String text) {
    return rows.stream()
        .map(AtRiskRow::label)
        .filter(label -> folded(label).equals(folded(text)))
        .findFirst()
        .orElse(text);
  }

  /** The row of numbers at risk of a name; where one curve has one row, that one. */
  Optional<AtRiskRow> row(Name name) {
    List<AtRiskRow> same =
        rows.stream()
            .filter(r -> !name.text().isEmpty() && folded(r.label()).equals(folded(name.text())))
            .toList();
    if (same.size() == 1) {
      return Optional.of(same.get(0));
    }
    return rows.size() == 1 && drawn.curves().size() == 1
        ? Optional.of(rows.get(0))
        : Optional.empty();
  }

  static String folded(String text) {
    return Normalizer.normalize(text, Normalizer.Form.NFKC)
        .toLowerCase(Locale.ROOT)
        .replaceAll("[^\\p{L}0-9]", "");
  }
}
