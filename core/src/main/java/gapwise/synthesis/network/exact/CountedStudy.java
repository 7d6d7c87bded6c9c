package gapwise.synthesis.network.exact;

import gapwise.effect.ArmCounts;
import java.util.HashSet;
import java.util.List;

/**
 * One study of two or more treatments with its events.
 *
 * @param label for people
 * @param treatments two or more, each once
 * @param arms the counts of each treatment, whole numbers
 */
public record CountedStudy(String label, List<String> treatments, List<ArmCounts> arms) {
  public CountedStudy {
    treatments = List.copyOf(treatments);
    arms = List.copyOf(arms);
    if (treatments.size() < 2 || treatments.size() != arms.size()) {
      throw new IllegalArgumentException(
          label + ": " + treatments.size() + " treatments with " + arms.size() + " arms");
    }
    if (new HashSet<>(treatments).size() != treatments.size()) {
      throw new IllegalArgumentException(label + " has a treatment twice: " + treatments);
    }
  }

  /** Whether some patients had the event and some had not; else it says nothing of odds ratios. */
  public boolean tells() {
    return arms.stream().anyMatch(arm -> arm.events() > 0)
        && arms.stream().anyMatch(arm -> arm.nonEvents() > 0);
  }

  /** Arms less one. */
  int contrasts() {
    return arms.size() - 1;
  }

  /**
   * How many differences between arms have a top of their own, events being able to move either way
   * between the two: arms less groups of arms so joined.
   */
  int contrastsWithTop() {
    int[] group = new int[arms.size()];
    int joined = 0;
    for (int i = 0; i < group.length; i++) {
      group[i] = i;
    }
    for (int i = 0; i < group.length; i++) {
      for (int j = 0; j < i; j++) {
        if (canMove(i, j) && canMove(j, i) && group[i] != group[j]) {
          int gone = group[i];
          for (int l = 0; l < group.length; l++) {
            group[l] = group[l] == gone ? group[j] : group[l];
          }
          joined++;
        }
      }
    }
    return joined;
  }

  /** Whether events could move from one arm to another without a change of the total. */
  boolean canMove(int from, int to) {
    return from != to && arms.get(from).events() > 0 && arms.get(to).nonEvents() > 0;
  }
}
