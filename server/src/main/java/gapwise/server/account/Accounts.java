package gapwise.server.account;

import gapwise.store.WorkingCopies;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.UnaryOperator;

/** The accounts of one evidence base, as every process that has it open sees them. */
public final class Accounts {
  private static final String KIND = "account";

  /** Changes that meet are tried again; more than this never meets. */
  private static final int TRIES = 20;

  /**
   * Where there are none, every request asks so: the first one that another process makes is seen
   * that much later at most, one that this process makes at once.
   */
  private static final long NONE_NANOSECONDS = 250_000_000;

  private final WorkingCopies copies;
  private final AtomicLong written = new AtomicLong();
  private volatile Optional<None> none = Optional.empty();

  /** That there was no account, when, and after how many writes of this process. */
  private record None(long nanoTime, long written) {}

  Accounts(WorkingCopies copies) {
    this.copies = copies;
  }

  /** Every account, closed ones last, by name. */
  public List<Account> all() {
    List<Account> all = new ArrayList<>();
    copies.forEach(KIND, copy -> all.add(Account.ofJson(copy.json())));
    all.sort(Comparator.comparing(Account::closed).thenComparing(Account::key));
    return List.copyOf(all);
  }

  /** Those that somebody may sign in with. */
  public List<Account> open() {
    return all().stream().filter(account -> !account.closed()).toList();
  }

  /** Whether there is any account that somebody may sign in with. */
  public boolean any() {
    long now = System.nanoTime();
    long after = written.get();
    if (none.filter(one -> one.written == after && now - one.nanoTime < NONE_NANOSECONDS)
        .isPresent()) {
      return false;
    }
    boolean any = copies.holds(KIND) && !open().isEmpty();
    none = any ? Optional.empty() : Optional.of(new None(now, after));
    return any;
  }

  /** The account of a name, closed or not. */
  public Optional<Account> find(String name) {
    return name.isBlank()
        ? Optional.empty()
        : copies.find(KIND, Account.key(name)).map(copy -> Account.ofJson(copy.json()));
  }

  /**
   * Keeps a new account.
   *
   * @param by who makes it
   * @return false where the name is taken, be it by a closed one; nothing is changed then
   */
  public boolean add(Account account, String by) {
    boolean added = copies.keep(KIND, account.key(), account.toJson(), by, 0).isPresent();
    written.incrementAndGet();
    return added;
  }

  /**
   * Changes an account as it stands at that moment.
   *
   * @return the account as it stands now; empty where there is none of this name
   */
  public Optional<Account> change(String name, UnaryOperator<Account> change, String by) {
    for (int i = 0; i < TRIES; i++) {
      var seen = copies.find(KIND, Account.key(name));
      if (seen.isEmpty()) {
        return Optional.empty();
      }
      Account next = change.apply(Account.ofJson(seen.get().json()));
      String key = Account.key(name);
      if (copies.keep(KIND, key, next.toJson(), by, seen.get().version()).isPresent()) {
        written.incrementAndGet();
        return Optional.of(next);
      }
    }
    throw new IllegalStateException("an account was changed by others " + TRIES + " times");
  }

  /** Whether nobody but this person could look after the accounts. */
  public boolean isLastAdministrator(Account account) {
    return account.role() == Role.ADMINISTRATOR
        && open().stream()
            .filter(other -> other.role() == Role.ADMINISTRATOR)
            .allMatch(other -> other.key().equals(account.key()));
  }
}
