package gapwise.server.page.people;

import gapwise.server.account.Role;
import gapwise.server.page.Site;
import java.util.List;
import java.util.Optional;

/** One's own account, or that there is none. */
public sealed interface OwnView {
  /** What the page stands in. */
  Site site();

  /** There are no accounts. */
  record Alone(Site site) implements OwnView {}

  /**
   * One's own.
   *
   * @param role what one is
   * @param given whether somebody else made the password
   * @param words what was done, or why it was not; may be empty
   * @param made the secret of a token that was just made, which is shown this once
   * @param roles what a token may be made for
   * @param tokens all there are
   */
  record Own(
      Site site,
      String name,
      Role role,
      boolean given,
      String words,
      Optional<String> made,
      List<Role> roles,
      List<TokenLine> tokens)
      implements OwnView {
    public Own {
      roles = List.copyOf(roles);
      tokens = List.copyOf(tokens);
    }
  }
}
