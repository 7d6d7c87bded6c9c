package gapwise.server.account;

import java.util.Objects;
import java.util.Optional;

/**
 * Who asks at this moment, for every room that must know: forms that keep a name, the frame of
 * pages. It belongs to the thread that answers the request; work in the background is told a name
 * when it is begun.
 *
 * @param way how it is known who asks
 * @param account who asks; empty on one's own machine, and before signing in
 * @param role what may be done at most
 */
public record Actor(Way way, Optional<Account> account, Role role) {
  /** How it is known who asks. */
  public enum Way {
    /** There are no accounts: whoever uses this machine may do everything, as before. */
    ALONE,
    /** There are accounts, and nobody has signed in. */
    NOBODY,
    /** By a session of a browser. */
    SESSION,
    /** By a token of a program. */
    TOKEN
  }

  private static final Actor NOBODY = new Actor(Way.NOBODY, Optional.empty(), Role.READER);
  private static final Actor ALONE = new Actor(Way.ALONE, Optional.empty(), Role.ADMINISTRATOR);
  private static final ThreadLocal<Actor> NOW = ThreadLocal.withInitial(() -> NOBODY);

  public Actor {
    Objects.requireNonNull(way, "way");
    Objects.requireNonNull(role, "role");
    if (account.isPresent() != (way == Way.SESSION || way == Way.TOKEN)) {
      throw new IllegalArgumentException("who has signed in has an account, and nobody else");
    }
  }

  /** Whoever uses a machine of one's own. */
  static Actor alone() {
    return ALONE;
  }

  /** Nobody who is known. */
  static Actor nobody() {
    return NOBODY;
  }

  /** Who asks the request that this thread answers; nobody where it answers none. */
  public static Actor now() {
    return NOW.get();
  }

  /** Makes this the one who asks, until the next one does. */
  void enter() {
    NOW.set(this);
  }

  /** Forgets who asked. */
  public static void leave() {
    NOW.remove();
  }

  /** The name that forms keep, whatever was typed; empty where it is to be typed. */
  public Optional<String> name() {
    return account.map(Account::name);
  }

  /** Whether this may be done. */
  public boolean may(Right right) {
    return switch (way) {
      case ALONE -> true;
      case NOBODY -> right == Right.OPEN;
      case SESSION -> role.may(right);
      case TOKEN -> role.may(right) && right.takesToken();
    };
  }
}
