package gapwise.server.page.option;

/**
 * A result that is not worked out yet.
 *
 * @param part address of the result alone
 * @param whole address of the page with it, for browsers without script
 */
public record Fetching(String part, String whole) {
  /** The name that asks for the whole page at once, for browsers without script. */
  static final String WHOLE = "whole";

  /** What is asked for at once. */
  enum Way {
    /** The page, which fetches what takes long. */
    PAGE,
    /** The page with all that takes long. */
    WHOLE,
    /** The next part of what takes long, so that no request takes all of it. */
    PART
  }
}
