package gapwise.figure.plane;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.Figure;
import gapwise.figure.FigureProvenance;
import gapwise.figure.drawing.MethodMark;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Setting;
import gapwise.figure.value.Check;
import gapwise.figure.value.Shown;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * How often each method has the highest net benefit, at each amount of money for one unit of
 * effect, as a value; and which of them is best on average, the frontier.
 *
 * @param title what is shown
 * @param sentences what it says
 * @param amount what the amounts are: "EUR of 2024 for one more year healed"
 * @param amounts rising, two or more
 * @param lines the methods, at most {@link Plane#MOST_METHODS} and the one they stand against
 * @param best at each amount, the place of the method that is best on average
 * @param cautions what must be known beside it
 * @param provenance where the numbers come from
 */
public record Acceptability(
    String title,
    List<String> sentences,
    String amount,
    List<Double> amounts,
    List<Line> lines,
    List<Integer> best,
    List<String> cautions,
    FigureProvenance provenance)
    implements Figure {
  /**
   * One method.
   *
   * @param kind which
   * @param shares at each amount, the share of draws in which it is best, 0 to 1
   */
  public record Line(MethodMark kind, List<Double> shares) {
    public Line {
      Objects.requireNonNull(kind, "kind");
      shares = List.copyOf(shares);
      for (double share : shares) {
        if (!(share >= 0 && share <= 1)) {
          throw new IllegalArgumentException(kind.label() + ": share " + share);
        }
      }
    }
  }

  public Acceptability {
    Check.words(title, "title");
    sentences = List.copyOf(sentences);
    Check.words(amount, "amount");
    amounts = List.copyOf(amounts);
    lines = List.copyOf(lines);
    best = List.copyOf(best);
    cautions = List.copyOf(cautions);
    Objects.requireNonNull(provenance, "provenance");
    int n = amounts.size();
    if (n < 2 || best.size() != n || lines.stream().anyMatch(l -> l.shares().size() != n)) {
      throw new IllegalArgumentException("needs two amounts or more, each with all its numbers");
    }
    if (lines.size() < 2 || lines.size() > Plane.MOST_METHODS + 1) {
      throw new IllegalArgumentException("takes 2 to 7 methods, was " + lines.size());
    }
    for (int i = 0; i < n; i++) {
      Check.finite(amounts.get(i), "amount");
      if (i > 0 && amounts.get(i) <= amounts.get(i - 1)) {
        throw new IllegalArgumentException("amounts must rise, were " + amounts);
      }
      if (best.get(i) < 0 || best.get(i) >= lines.size()) {
        throw new IllegalArgumentException("no method " + best.get(i));
      }
    }
  }

  /** Places at which the method that is best on average has changed. */
  private List<Integer> changes() {
    List<Integer> changes = new ArrayList<>();
    for (int i = 1; i < amounts.size(); i++) {
      if (!best.get(i).equals(best.get(i - 1))) {
        changes.add(i);
      }
    }
    return changes;
  }

  private String name(int place) {
    return lines.get(best.get(place)).kind().label();
  }

  @Override
  public String description() {
    List<String> words = new ArrayList<>();
    words.add(say("figure.acceptability", Map.of("amount", amount)));
    if (provenance.demonstration()) {
      words.add(FigureProvenance.INVENTED);
    }
    words.add(say("figure.best-first", Map.of("method", name(0))));
    for (int change : changes()) {
      words.add(
          say(
              "figure.best-from",
              Map.of("method", name(change), "amount", Shown.number(amounts.get(change)))));
    }
    words.addAll(sentences);
    words.addAll(cautions);
    return String.join(" ", words);
  }

  @Override
  public List<Picture> draw(Setting setting) {
    return List.of(AcceptabilityDrawing.draw(this, setting));
  }

  @Override
  public String csv() {
    return PlaneTable.csv(this);
  }
}
