package gapwise.analysis.plan;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import java.util.List;

/**
 * One thing a plan can ask, as its field {@code task} says: what it takes for granted, what it may
 * not ask, and how its fields become settings. Nobody reads the JSON of a plan after {@link #read}.
 */
public interface Task {
  /** Nearer to 0 and 1 limits are lost in rounding; no report uses such levels. */
  double LEAST_LEVEL = 0.01;

  /** The other end. */
  double MOST_LEVEL = 0.999999;

  /** The word in a plan. */
  String word();

  /** Fills in what a plan of the right form leaves out, but for the level. */
  void fill(Filling plan);

  /** Notes what a plan whose defaults are filled in may still not ask. */
  void check(ObjectNode full, Problems problems);

  /** The settings of a plan in which nothing is wrong. */
  Plan read(ObjectNode full);

  /** Everything that is wrong with a plan whose defaults are filled in. */
  default List<Problem> problems(ObjectNode full) {
    Problems problems = new Problems();
    double level = full.get("level").asDouble();
    if (level < LEAST_LEVEL || level > MOST_LEVEL) {
      problems.add(
          "level",
          "out-of-range",
          "found "
              + level
              + ", expected a share such as 0.95, from "
              + LEAST_LEVEL
              + " to "
              + MOST_LEVEL);
    }
    check(full, problems);
    return problems.list();
  }
}
