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
}
