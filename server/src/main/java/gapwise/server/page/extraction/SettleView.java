package gapwise.server.page.extraction;

import gapwise.exchange.TemplateColumn;
import gapwise.server.page.Site;
import java.util.List;
import java.util.Optional;

/**
 * What differs between two extractions, to be settled by one person.
 *
 * @param site the frame
 * @param href address of the page of the paper
 * @param study name of the study
 * @param who who settles
 * @param told who read, how much is alike, how much differs
 * @param open how many are not settled yet
 * @param hand the difference in hand; empty where there is none
 * @param fields every difference, with a link to it
 * @param alike what both filled alike
 * @param finish what stands in the way of the agreed record, once all is settled
 */
public record SettleView(
    Site site,
    String href,
    String study,
    String who,
    List<String> told,
    int open,
    Optional<InHand> hand,
    List<Field> fields,
    List<Alike> alike,
    Optional<Finish> finish) {
  public SettleView {
    told = List.copyOf(told);
    fields = List.copyOf(fields);
    alike = List.copyOf(alike);
  }

  /**
   * One difference.
   *
   * @param key names it
   * @param seen version of what was settled of it, 0 for nothing
   * @param where the row, in words
   * @param field the field
   * @param hint what the field is, by the template
   * @param first what the first has
   * @param second what the second has
   * @param column the field where a third value can hold
   * @param together fields that are taken with it, in words; empty text for none
   * @param so what was settled so far, in words; empty text for nothing
   * @param rows what may be said of the rows
   * @param ways the ones before and after it
   */
  public record InHand(
      String key,
      int seen,
      String where,
      String field,
      String hint,
      Value first,
      Value second,
      Optional<TemplateColumn> column,
      String together,
      String so,
      Rows rows,
      Ways ways) {}

  /**
   * What one person has.
   *
   * @param name who
   * @param text what stands there; empty for nothing
   * @param unit in what a number is, or what it counts; empty for others
   * @param label what its button says
   * @param place where the row stands in the paper, in words
   * @param words of the paper
   * @param page address of the page with the number marked, and of that page as a part
   */
  public record Value(
      String name,
      String text,
      String unit,
      String label,
      String place,
      String words,
      Optional<Page> page) {}

  /** A page of the paper. */
  public record Page(int number, String href, String part) {}

  /** Addresses of the difference before and the one after; empty at the ends. */
  public record Ways(Optional<String> before, Optional<String> after) {}

  /**
   * What may be said of the rows: which of the other person's is the same, or that two are not.
   *
   * @param sheet their sheet
   * @param mine number of the row of the first, 0 where there is none
   * @param hers the same of the second
   * @param others rows of the other person that nobody has put together with one
   * @param apart number of the row of the second that is taken for the same; 0 for none
   */
  public record Rows(String sheet, int mine, int hers, List<Other> others, int apart) {}

  /** A row of the other person. */
  public record Other(int number, String words) {}

  /** A difference in the list. */
  public record Field(String href, String words, String settled, boolean current) {}

  /** A field that both filled alike. */
  public record Alike(String where, String field, String text) {}

  /**
   * What stands in the way of the agreed record.
   *
   * @param wrong what cannot be so, or is still to be filled in
   * @param doubts what is doubtful and not settled
   * @param follows the version of the study that it follows, 0 for none
   * @param overtaken the version that stands now, where it is another; 0 where it is not
   */
  public record Finish(List<String> wrong, List<Doubt> doubts, int follows, int overtaken) {}

  /** A doubt to be settled. */
  public record Doubt(String key, String words) {}
}
