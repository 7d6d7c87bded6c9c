package gapwise.server.page;

import gapwise.server.account.Actor;
import gapwise.server.address.Address;
import gapwise.server.home.Notice;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What every page shares.
 *
 * @param title title of the page
 * @param ways the ways to other pages
 * @param invented whether any study of the evidence base is invented, which every page then says
 * @param notices what must be known of the evidence base, such as that a record is damaged
 * @param assets style and script
 * @param version version of the program
 * @param person who asks, and what may be done
 * @param keeping the question of the page, where it can be kept; else empty
 */
public record Site(
    String title,
    Navigation ways,
    boolean invented,
    List<Notice> notices,
    Assets assets,
    String version,
    Actor person,
    Optional<Keeping> keeping) {
  public Site {
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(ways, "ways");
    notices = List.copyOf(notices);
    Objects.requireNonNull(assets, "assets");
    Objects.requireNonNull(version, "version");
    Objects.requireNonNull(person, "person");
    Objects.requireNonNull(keeping, "keeping");
  }

  /** The same for a page whose question can be kept. */
  public Site keeping(String page, Address address) {
    return new Site(
        title,
        ways,
        invented,
        notices,
        assets,
        version,
        person,
        Optional.of(Keeping.of(title, page, address)));
  }
}
