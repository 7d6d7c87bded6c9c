package gapwise.server.page.paper;

import gapwise.evidence.PageBox;
import gapwise.server.address.PagePaths;
import gapwise.server.page.Site;
import java.util.List;
import java.util.Optional;

/**
 * One page of a paper.
 *
 * @param site the frame; empty where it stands within another page
 * @param paper name of the file
 * @param number of the page, from 1
 * @param pages how many there are
 * @param size width and height in points
 * @param words with their boxes, in reading order
 * @param marked boxes to be marked
 * @param tables tables that seem to stand on it
 * @param figure address at which a figure of it is read into the draft beside it
 * @param picture address of its picture
 * @param notes what a person should know of this page
 */
public record PageView(
    Optional<Site> site,
    String paper,
    int number,
    int pages,
    Size size,
    List<Placed> words,
    List<PageBox> marked,
    List<Table> tables,
    Optional<String> figure,
    String picture,
    List<String> notes) {
  public PageView {
    words = List.copyOf(words);
    marked = List.copyOf(marked);
    tables = List.copyOf(tables);
    notes = List.copyOf(notes);
  }

  /** Width and height in points. */
  public record Size(double width, double height) {}

  /** A table, with the page on which it is taken into a draft. */
  public record Table(String caption, String href) {}

  /** A word where it stands. */
  public record Placed(String text, double left, double top, double width, double height) {}

  /** Address of another page, as part of another page or by itself. */
  public String page(int other) {
    String part = site.isPresent() ? "" : "/part";
    return PagePaths.PAPERS + "/" + paper + "/pages/" + other + part;
  }
}
