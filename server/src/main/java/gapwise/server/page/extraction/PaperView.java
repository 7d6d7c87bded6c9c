package gapwise.server.page.extraction;

import gapwise.extraction.TwiceRead;
import gapwise.server.page.Site;
import java.util.List;
import java.util.Optional;

/**
 * One paper that two people extract apart.
 *
 * @param site the frame
 * @param paper who reads it, and how far it is
 * @param href address of this page
 * @param far how far each of the two is, in words
 * @param stage where the paper stands, in words
 * @param told who read, who settled, and how much, once that may be seen
 * @param lines every field that differed
 * @param study address of the study, where it stands
 */
public record PaperView(
    Site site,
    TwiceRead paper,
    String href,
    List<String> far,
    String stage,
    List<String> told,
    List<Line> lines,
    Optional<String> study) {
  public PaperView {
    far = List.copyOf(far);
    told = List.copyOf(told);
    lines = List.copyOf(lines);
  }

  /**
   * A field that differed.
   *
   * @param where the row, in words
   * @param field the field; "the row as a whole" for a row of one person alone
   * @param first what the first read; empty text for nothing
   * @param second what the second read
   * @param settled what was settled of it
   */
  public record Line(
      String where, String field, String first, String second, Optional<Settled> settled) {}

  /**
   * What was settled.
   *
   * @param value what holds; empty text for nothing
   * @param whose whose value it is, in words
   * @param why the reason; empty where one of both alone had read something
   * @param who who settled it
   */
  public record Settled(String value, String whose, String why, String who) {}
}
