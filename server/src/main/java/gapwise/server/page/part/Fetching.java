package gapwise.server.page.part;

import gapwise.server.address.Address;
import gapwise.server.home.Pieces;
import java.util.List;

/**
 * A result that is not worked out yet.
 *
 * @param part address of the result alone
 * @param whole address of the page with it, for browsers without script
 */
public record Fetching(String part, String whole) {
  /** The name that asks for the whole page at once, for browsers without script. */
  private static final String WHOLE = "whole";

  private static final String YES = "yes";

  /** What is asked for at once. */
  public enum Way {
    /** The page, which fetches what takes long. */
    PAGE,
    /** The page with all that takes long. */
    WHOLE,
    /** The next piece of what takes long, so that no request takes all of it. */
    PART;

    /** How an address asks for a page. */
    public static Way of(Address address) {
      return address.has(Fetching.WHOLE, YES) ? WHOLE : PAGE;
    }

    /** Works out as much as is asked for at once; says whether the result can be shown now. */
    public boolean shows(Pieces pieces) {
      if (this == WHOLE) {
        pieces.all();
        return true;
      }
      if (this == PART && !pieces.areThere()) {
        pieces.next();
      }
      return pieces.areThere();
    }
  }

  /**
   * Where the result is fetched.
   *
   * @param address what is asked
   * @param part path of the result alone
   * @param page path of the page
   */
  public static Fetching of(Address address, String part, String page) {
    return new Fetching(address.at(part), address.with(WHOLE, YES).at(page));
  }

  /** What an address asks apart from the way of showing it. */
  public static Address plain(Address address) {
    return address.without(List.of(WHOLE));
  }
}
