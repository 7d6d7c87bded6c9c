package gapwise.server.account;

import gapwise.store.Trail;
import gapwise.store.WorkingCopies;
import java.time.Clock;
import java.util.Objects;

/**
 * All that is kept of people, beside the records of one evidence base.
 *
 * @param accounts who they are
 * @param sessions who has signed in
 * @param tokens what their programs ask by
 * @param trail what they did
 * @param clock tells the time that sessions and tokens end by
 */
public record People(
    Accounts accounts, Sessions sessions, Tokens tokens, Trail trail, Clock clock) {
  public People {
    Objects.requireNonNull(accounts, "accounts");
    Objects.requireNonNull(sessions, "sessions");
    Objects.requireNonNull(tokens, "tokens");
    Objects.requireNonNull(trail, "trail");
    Objects.requireNonNull(clock, "clock");
  }

  /** Those of a store. */
  public static People of(WorkingCopies copies, Trail trail, Clock clock) {
    Accounts accounts = new Accounts(copies);
    return new People(
        accounts,
        new Sessions(copies, accounts, clock),
        new Tokens(copies, accounts, clock),
        trail,
        clock);
  }
}
