package gapwise.decision.sheet;

import gapwise.evidence.vocabulary.Method;
import java.util.List;
import java.util.Objects;

/**
 * The page for the team.
 *
 * @param person what else is asked about the patient: age, smoking, diabetes
 * @param methods the columns
 * @param lines the outcomes
 * @param notAsked outcomes that nobody asked for, by name
 * @param followed how long people were followed, and how the studies were read
 * @param settled what persons settled of certainty, with reasons, who and when
 * @param sources the studies behind the numbers, in order of their labels
 * @param retracted that retracted publications do not count, and which are left out for it
 * @param answers what compares, matters, is weighed and reckoned beside the table; the screen tells
 *     all of it
 */
public record TeamPage(
    List<String> person,
    List<Method> methods,
    List<Line> lines,
    List<String> notAsked,
    String followed,
    List<String> settled,
    List<Source> sources,
    String retracted,
    TeamAnswers answers) {
  public TeamPage {
    person = List.copyOf(person);
    methods = List.copyOf(methods);
    lines = List.copyOf(lines);
    notAsked = List.copyOf(notAsked);
    settled = List.copyOf(settled);
    sources = List.copyOf(sources);
    Objects.requireNonNull(retracted, "retracted");
    Objects.requireNonNull(answers, "answers");
  }

  /** More labels than these stand on no paper; the screen lists all. */
  private static final int MOST_PRINTED = 40;

  /** The sources that paper has room for. */
  public List<Source> printed() {
    return sources.subList(0, Math.min(MOST_PRINTED, sources.size()));
  }

  /** How many sources paper has no room for. */
  public int unprinted() {
    return sources.size() - printed().size();
  }

  /** As much of the answers as paper has room for. */
  public TeamAnswers printedAnswers() {
    return TeamFit.fitted(this);
  }

  /** A study behind the numbers, by its id and its label. */
  public record Source(String id, String label) {}

  /**
   * One outcome.
   *
   * @param aspect what matters
   * @param outcome the way it is counted, with its unit
   * @param cells one for each method
   */
  public record Line(String aspect, String outcome, List<TeamCell> cells) {
    public Line {
      cells = List.copyOf(cells);
    }
  }

  /**
   * One number.
   *
   * @param value average or value with its interval, or why there is none
   * @param known whether the value is a number
   * @param counted events and people, series; empty where there is none
   * @param newCentre where a new centre may lie; empty where it cannot be told
   * @param fit the fit in four numbers: inside, at the edge, unknown, outside, in percent
   * @param certainty level and letters of what lowers it, and whether a person settled it
   */
  public record TeamCell(
      String value, boolean known, String counted, String newCentre, String fit, String certainty) {

    static TeamCell without(String why) {
      return new TeamCell(why, false, "", "", "", "");
    }
  }
}
