package gapwise.server.page.kept;

import gapwise.review.kept.KeptQuestion;
import gapwise.review.kept.KeptVersion;
import gapwise.review.kept.Moved;
import gapwise.server.address.Address;
import gapwise.server.page.Keeping;
import gapwise.server.page.Site;
import gapwise.server.page.part.Fetching;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * All kept questions.
 *
 * @param lines one each, the last taken first
 * @param whole address of the page with all of them worked out; empty where they are
 * @param keeping a question that is to be kept; empty where none was brought along
 */
public record KeptView(
    Site site, List<Line> lines, Optional<String> whole, Optional<Keeping> keeping) {
  public KeptView {
    Objects.requireNonNull(site, "site");
    lines = List.copyOf(lines);
    Objects.requireNonNull(whole, "whole");
    Objects.requireNonNull(keeping, "keeping");
  }

  /**
   * One question.
   *
   * @param id its id
   * @param title what it is called
   * @param href its page, opened from here
   * @param place what that page is called
   * @param taken who took its answer, when and why
   * @param standing how it stands
   * @param more address of what moved, and of its versions
   */
  public record Line(
      String id,
      String title,
      String href,
      String place,
      String taken,
      Standing standing,
      String more) {}

  /** How an answer stands. */
  public sealed interface Standing {}

  /** It is not worked out yet. */
  public record Working(Fetching fetching) implements Standing {}

  /** It cannot be answered any more. */
  public record Lost(String why) implements Standing {}

  /**
   * It is known.
   *
   * @param code of the mark
   * @param mark how it stands, in a few words
   * @param words what moved, counted
   */
  public record Known(String code, String mark, String words) implements Standing {
    /** Whether all is as it was. */
    public boolean asItWas() {
      return code.equals(Moved.Mark.AS_IT_WAS.code());
    }
  }

  /**
   * One question with all that moved.
   *
   * @param version which version stands
   * @param moved what moved; empty where it is not worked out or cannot be
   * @param steps its versions, the last first
   */
  public record One(
      Site site, Line line, int version, Optional<MovedView> moved, List<Step> steps) {
    public One {
      steps = List.copyOf(steps);
    }
  }

  /**
   * A version.
   *
   * @param name which
   * @param taken who took it, when and why
   * @param words what it moved against the one before; empty for the first
   */
  public record Step(String name, String taken, String words) {}

  /** What a page says of the kept question from which it was opened. */
  public record Opened(KeptVersion version, Line line) {
    /** Address that asks the same again, once more of it is worked out. */
    public String again() {
      KeptQuestion question = version.question();
      return new Address(Map.of())
          .with("at", question.page() + "?" + question.query())
          .at(line.more() + "/mark");
    }
  }
}
