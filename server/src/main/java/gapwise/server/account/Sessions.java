package gapwise.server.account;

import gapwise.store.WorkingCopies;
import gapwise.store.WorkingCopy;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiPredicate;

/**
 * Who has signed in. Sessions are kept with the records, so that a restart ends none and every
 * process knows them; what is kept is a digest, by which nobody can sign in.
 */
public final class Sessions {
  private static final String KIND = "session";

  /** Use is noted no more often than this, which is the precision of the idle end. */
  static final Duration NOTED = Duration.ofMinutes(5);

  /** Browsers that one person is signed in with; a further one ends the oldest. */
  static final int MOST_OF_ONE = 20;

  private final WorkingCopies copies;
  private final Accounts accounts;
  private final Clock clock;

  Sessions(WorkingCopies copies, Accounts accounts, Clock clock) {
    this.copies = copies;
    this.accounts = accounts;
    this.clock = clock;
  }

  /** Begins one, under a secret that was never used before; ends what is over. */
  public String begin(Account account) {
    Instant now = clock.instant();
    sweep(account, now);
    String secret = Secret.made();
    Session session = new Session(account.key(), account.generation(), now, now);
    copies.keep(KIND, Secret.digest(secret), session.toJson(), account.name(), 0);
    return secret;
  }

  private void sweep(Account account, Instant now) {
    List<WorkingCopy> own = new ArrayList<>();
    drop(
        (copy, session) -> {
          if (session.account().equals(account.key())) {
            own.add(copy);
          }
          return session.isOver(now);
        });
    // The last used come first.
    own.stream().skip(MOST_OF_ONE - 1L).forEach(copy -> copies.drop(KIND, copy.key()));
  }

  /**
   * Whose session it is now; empty where it is over, or its account closed or given another
   * password.
   */
  public Optional<Account> account(String secret) {
    Instant now = clock.instant();
    String key = Secret.digest(secret);
    Optional<WorkingCopy> copy = copies.find(KIND, key);
    if (copy.isEmpty()) {
      return Optional.empty();
    }
    Session session = Session.ofJson(copy.get().json());
    Optional<Account> account =
        accounts
            .find(session.account())
            .filter(one -> !one.closed() && one.generation() == session.generation());
    if (account.isEmpty() || session.isOver(now)) {
      copies.drop(KIND, key);
      return Optional.empty();
    }
    if (!now.isBefore(session.seen().plus(NOTED))) {
      // Where another request has noted it meanwhile, nothing is kept, which is as good.
      copies.keep(
          KIND, key, session.seen(now).toJson(), account.get().name(), copy.get().version());
    }
    return account;
  }

  /** Ends one. */
  public void end(String secret) {
    copies.drop(KIND, Secret.digest(secret));
  }

  /** Ends all of one person. */
  public void endAll(Account account) {
    drop((copy, session) -> session.account().equals(account.key()));
  }

  private void drop(BiPredicate<WorkingCopy, Session> which) {
    List<String> gone = new ArrayList<>();
    copies.forEach(
        KIND,
        copy -> {
          if (which.test(copy, Session.ofJson(copy.json()))) {
            gone.add(copy.key());
          }
        });
    gone.forEach(key -> copies.drop(KIND, key));
  }
}
