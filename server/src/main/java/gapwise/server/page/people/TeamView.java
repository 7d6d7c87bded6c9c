package gapwise.server.page.people;

import gapwise.server.account.Role;
import gapwise.server.page.Site;
import java.util.List;
import java.util.Optional;

/** The accounts of all, or that there are none. */
public sealed interface TeamView {
  /** What the page stands in. */
  Site site();

  /** There are no accounts. */
  record Alone(Site site) implements TeamView {}

  /**
   * The team.
   *
   * @param words what was done, or why it was not; may be empty
   * @param given a password that was just made, which is shown this once
   * @param people all accounts
   * @param roles every role
   * @param tokens of all
   */
  record Team(
      Site site,
      String words,
      Optional<Given> given,
      List<Person> people,
      List<Role> roles,
      List<TokenLine> tokens)
      implements TeamView {
    public Team {
      people = List.copyOf(people);
      roles = List.copyOf(roles);
      tokens = List.copyOf(tokens);
    }
  }

  /** A password that somebody is to sign in with once. */
  record Given(String name, String password) {}

  /**
   * One account.
   *
   * @param href where it is changed
   * @param made the day it was made
   */
  record Person(String name, String key, String href, Role role, String made, boolean closed) {}
}
