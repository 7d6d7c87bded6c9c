package gapwise.claim;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;

/**
 * How a claim stands when everything is analysed in every defensible way.
 *
 * @param about what is analysed in many ways: the direct comparison, or each method by itself
 * @param lines one for the direct comparison, or one for each method; none with a note instead
 * @param notes why a line is missing
 */
public record Ways(String about, List<Line> lines, List<String> notes) {
  public Ways {
    lines = List.copyOf(lines);
    notes = List.copyOf(notes);
  }

  /**
   * One body of evidence in many ways.
   *
   * @param heading whose evidence
   * @param analyses how many gave a value
   * @param firstMore of 100 analyses, those whose whole interval says more after the first method
   * @param secondMore those whose whole interval says more after the second
   * @param undecided those whose interval holds no difference
   * @param estimatesFirstMore those whose estimate alone lies on the side of the first
   * @param moves which choice and which study move it most
   * @param plan the plan
   */
  public record Line(
      String heading,
      int analyses,
      String firstMore,
      String secondMore,
      String undecided,
      String estimatesFirstMore,
      List<String> moves,
      ObjectNode plan) {
    public Line {
      moves = List.copyOf(moves);
      plan = plan.deepCopy();
    }

    @Override
    public ObjectNode plan() {
      return plan.deepCopy();
    }

    /** The plan as text. */
    public String planText() {
      return plan.toPrettyString();
    }
  }
}
