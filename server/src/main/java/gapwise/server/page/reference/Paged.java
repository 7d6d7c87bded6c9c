package gapwise.server.page.reference;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/**
 * Where a page of a list lies.
 *
 * @param page number of the page, from 1
 * @param pages how many there are, at least 1
 * @param href address of the list, to which the number of a page is added
 */
public record Paged(int page, int pages, String href) {
  /** Lines of a page. */
  static final int MOST = 50;

  /**
   * The page asked for, or the nearest there is.
   *
   * @param asked its number as it was asked for
   * @param lines lines in all
   */
  static Paged of(String asked, int lines, String href) {
    int pages = Math.max(1, (lines + MOST - 1) / MOST);
    int page = asked.matches("\\d{1,6}") ? Integer.parseInt(asked) : 1;
    return new Paged(Math.max(1, Math.min(pages, page)), pages, href);
  }

  /** The lines of this page. */
  <T> List<T> of(List<T> lines) {
    int start = (page - 1) * MOST;
    return lines.subList(start, Math.min(lines.size(), start + MOST));
  }

  /** Address of the page before. */
  public Optional<String> previous() {
    return page > 1 ? Optional.of(at(page - 1)) : Optional.empty();
  }

  /** Address of the next page. */
  public Optional<String> next() {
    return page < pages ? Optional.of(at(page + 1)) : Optional.empty();
  }

  private String at(int number) {
    return href + (href.contains("?") ? "&" : "?") + "page=" + number;
  }

  /** A text as it stands in an address. */
  static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }
}
