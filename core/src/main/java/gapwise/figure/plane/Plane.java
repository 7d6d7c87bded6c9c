package gapwise.figure.plane;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.Figure;
import gapwise.figure.FigureProvenance;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Setting;
import gapwise.figure.value.Check;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Shown;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;

/**
 * Methods against one of them on the plane of extra effect (across) and extra cost (up) as a value:
 * a mark for each draw that is shown, a larger one for the mean.
 *
 * @param title what is shown
 * @param sentences what it says
 * @param against name of the method that stands at 0
 * @param effect what effects are, with their unit: "years healed"
 * @param cost what costs are, with currency and year: "EUR of 2024"
 * @param clouds the other methods, at most {@link #MOST_METHODS}
 * @param cautions what must be known beside it
 * @param provenance where the numbers come from
 */
public record Plane(
    String title,
    List<String> sentences,
    String against,
    String effect,
    String cost,
    List<Cloud> clouds,
    List<String> cautions,
    FigureProvenance provenance)
    implements Figure {
  /** More clouds hide each other; our choice. */
  public static final int MOST_METHODS = 6;

  /** Marks of all methods together that can be told from each other; our choice. */
  private static final int MOST_MARKS = 600;

  /** Room on the far side of 0, so that all four quarters are there. */
  private static final double ROOM = 0.12;

  public Plane {
    Check.words(title, "title");
    sentences = List.copyOf(sentences);
    Check.words(against, "against");
    Check.words(effect, "effect");
    Check.words(cost, "cost");
    clouds = List.copyOf(clouds);
    cautions = List.copyOf(cautions);
    Objects.requireNonNull(provenance, "provenance");
    if (clouds.isEmpty() || clouds.size() > MOST_METHODS) {
      throw new IllegalArgumentException(
          "a plane takes 1 to " + MOST_METHODS + " methods, was " + clouds.size());
    }
  }

  /** How many draws of each of so many methods should be shown. */
  public static int marksOfEach(int methods) {
    return MOST_MARKS / Math.max(1, methods);
  }

  /** The stretch of extra effects to show. */
  Limits effects() {
    return reach(Cloud.Spot::effect);
  }

  /** The stretch of extra costs to show. */
  Limits costs() {
    return reach(Cloud.Spot::cost);
  }

  private Limits reach(ToDoubleFunction<Cloud.Spot> value) {
    List<Double> seen =
        clouds.stream()
            .flatMap(cloud -> Stream.concat(cloud.shown().stream(), Stream.of(cloud.mean())))
            .map(value::applyAsDouble)
            .toList();
    double least = Math.min(0, seen.stream().min(Comparator.naturalOrder()).orElse(0.0));
    double most = Math.max(0, seen.stream().max(Comparator.naturalOrder()).orElse(0.0));
    double room = most > least ? ROOM * (most - least) : 1;
    return new Limits(
        least < -room ? least - room / 3 : -room, most > room ? most + room / 3 : room);
  }

  /** The axis of effects in words. */
  String across() {
    return say("figure.plane-across", Map.of("effect", effect, "method", against));
  }

  /** The axis of costs in words. */
  String up() {
    return say("figure.plane-up", Map.of("cost", cost, "method", against));
  }

  @Override
  public String description() {
    List<String> words = new ArrayList<>();
    words.add(say("figure.plane", Map.of("across", across(), "up", up())));
    if (provenance.demonstration()) {
      words.add(FigureProvenance.INVENTED);
    }
    for (Cloud cloud : clouds) {
      words.add(
          say(
              "figure.plane-mean",
              Map.of(
                  "method",
                  cloud.kind().label(),
                  "effect",
                  Shown.difference(cloud.mean().effect(), effect),
                  "cost",
                  Shown.difference(cloud.mean().cost(), cost))));
    }
    words.addAll(sentences);
    words.addAll(cautions);
    return String.join(" ", words);
  }

  @Override
  public List<Picture> draw(Setting setting) {
    return List.of(PlaneDrawing.draw(this, setting));
  }

  @Override
  public String csv() {
    return PlaneTable.csv(this);
  }
}
