package gapwise.server.address;

import java.util.Optional;

/**
 * Where a page of a list lies in the whole.
 *
 * @param page 1 for the first
 * @param pages number of pages, at least 1
 * @param previous address of the page before
 * @param next address of the page after
 */
public record Paging(int page, int pages, Optional<String> previous, Optional<String> next) {
  /** Lines on one page. */
  public static final int LINES = 25;

  public static Paging of(String path, Address address, int page, int lines) {
    int pages = Math.max(1, (lines + LINES - 1) / LINES);
    int shown = Math.min(page, pages);
    return new Paging(
        shown,
        pages,
        shown > 1 ? Optional.of(at(path, address, shown - 1)) : Optional.empty(),
        shown < pages ? Optional.of(at(path, address, shown + 1)) : Optional.empty());
  }

  private static String at(String path, Address address, int page) {
    return address.with("page", String.valueOf(page)).at(path);
  }

  /** Reads the page of an address; what is no page is the first one. */
  public static int read(Address address) {
    String text = address.first("page");
    return text.matches("[1-9]\\d{0,5}") ? Integer.parseInt(text) : 1;
  }
}
