package gapwise.figure.plane;

import gapwise.figure.drawing.MethodMark;
import gapwise.figure.value.Check;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * The draws of one method on the plane, as many as an eye can take, and their mean.
 *
 * @param kind which method
 * @param mean mean extra effect and cost over all draws
 * @param shown draws that are drawn
 * @param draws how many there are
 */
public record Cloud(MethodMark kind, Spot mean, List<Spot> shown, int draws) {
  /**
   * A place on the plane.
   *
   * @param effect extra effect
   * @param cost extra cost
   */
  public record Spot(double effect, double cost) {
    public Spot {
      Check.finite(effect, "effect");
      Check.finite(cost, "cost");
    }
  }

  public Cloud {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(mean, "mean");
    shown = List.copyOf(shown);
    if (shown.size() > draws) {
      throw new IllegalArgumentException("shown were " + shown.size() + " of " + draws + " draws");
    }
  }

  /**
   * The cloud of all draws, thinned evenly in their order.
   *
   * @param all every draw
   * @param most how many to keep, 1 or more
   */
  public static Cloud thinned(MethodMark kind, Spot mean, List<Spot> all, int most) {
    int kept = Math.min(most, all.size());
    List<Spot> shown = new ArrayList<>();
    for (int i = 0; i < kept; i++) {
      shown.add(all.get((int) ((long) i * all.size() / kept)));
    }
    return new Cloud(kind, mean, shown, all.size());
  }
}
