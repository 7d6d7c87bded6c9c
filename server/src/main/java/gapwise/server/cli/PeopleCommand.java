package gapwise.server.cli;

import gapwise.server.account.Account;
import gapwise.server.account.Deeds;
import gapwise.server.account.Deeds.Kind;
import gapwise.server.account.Passwords;
import gapwise.server.account.People;
import gapwise.server.account.Role;
import gapwise.server.home.Records;
import java.io.IOException;
import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Accounts, looked after on the machine itself. */
@Command(
    name = "people",
    description =
        "Look after the accounts of an evidence base. With the first account everybody signs in,"
            + " and the server may listen beyond this machine.",
    mixinStandardHelpOptions = true)
public final class PeopleCommand implements Runnable {
  @Spec private CommandSpec spec;

  /** Without a command: how to use it. */
  @Override
  public void run() {
    spec.commandLine().usage(System.err);
  }

  @Command(
      name = "add",
      description =
          "Add an account. The password is asked for twice, or read as one line of standard input"
              + " where no person sits there.",
      mixinStandardHelpOptions = true)
  int add(
      @Parameters(paramLabel = "NAME", description = "Name to sign in with.") String typed,
      @Option(
              names = "--role",
              required = true,
              description = "reader, extractor, adjudicator or administrator")
          String word,
      @Mixin HomeOption home)
      throws IOException {
    Optional<String> name = Account.tidy(typed);
    Optional<Role> role = Role.find(word.toLowerCase(Locale.ROOT));
    if (name.isEmpty() || role.isEmpty()) {
      return wrong(
          role.isEmpty()
              ? "There is no role '" + word + "': reader, extractor, adjudicator, administrator."
              : "'" + typed + "' is no name: letters, digits, blanks and . ' - , 40 at most.");
    }
    try (Records records = home.records()) {
      People people = records.people();
      if (people.accounts().find(name.get()).isPresent()) {
        return wrong("There is an account of the name " + name.get() + " already, open or closed.");
      }
      if (role.get() != Role.ADMINISTRATOR && !people.accounts().any()) {
        return wrong("The first account is that of an administrator: --role administrator");
      }
      Optional<String> password = TypedPassword.ask(name.get());
      if (password.isEmpty()) {
        return Exit.WRONG;
      }
      String hash = new Passwords().hash(password.get());
      Account account = Account.begun(name.get(), role.get(), hash, people.clock());
      if (!people.accounts().add(account, user())) {
        return wrong("Somebody added that name at this moment.");
      }
      deeds(people).add(Kind.ACCOUNT_MADE, account.name(), account.role().word());
    }
    return done(name.get() + " is added as " + role.get().word() + ".");
  }

  @Command(name = "list", description = "List the accounts.", mixinStandardHelpOptions = true)
  int list(@Mixin ExistingHomeOption home) {
    try (Records records = home.records()) {
      for (Account account : records.people().accounts().all()) {
        System.out.println(
            account.name() + "\t" + (account.closed() ? "closed" : account.role().word()));
      }
    }
    return Exit.DONE;
  }

  @Command(
      name = "role",
      description = "Give an account another role.",
      mixinStandardHelpOptions = true)
  int role(
      @Parameters(paramLabel = "NAME") String name,
      @Parameters(paramLabel = "ROLE") String word,
      @Mixin ExistingHomeOption home) {
    Optional<Role> role = Role.find(word.toLowerCase(Locale.ROOT));
    if (role.isEmpty()) {
      return wrong(
          "There is no role '" + word + "': reader, extractor, adjudicator, administrator.");
    }
    try (Records records = home.records()) {
      People people = records.people();
      Optional<Account> account = open(people, name);
      if (account.isEmpty()) {
        return wrong("There is no open account of the name " + name + ".");
      }
      if (role.get() != Role.ADMINISTRATOR
          && people.accounts().isLastAdministrator(account.get())) {
        return wrong("This is the last administrator; give another person this role first.");
      }
      people.accounts().change(name, now -> now.with(role.get()), user());
      String change = account.get().role().word() + " to " + role.get().word();
      deeds(people).add(Kind.ROLE_CHANGED, account.get().name(), change);
      return done(account.get().name() + " is " + role.get().word() + " now.");
    }
  }

  @Command(
      name = "password",
      description = "Give an account a new password, which ends what is signed in with it.",
      mixinStandardHelpOptions = true)
  int password(@Parameters(paramLabel = "NAME") String name, @Mixin ExistingHomeOption home)
      throws IOException {
    try (Records records = home.records()) {
      People people = records.people();
      Optional<Account> account = open(people, name);
      if (account.isEmpty()) {
        return wrong("There is no open account of the name " + name + ".");
      }
      Optional<String> password = TypedPassword.ask(account.get().name());
      if (password.isEmpty()) {
        return Exit.WRONG;
      }
      String hash = new Passwords().hash(password.get());
      people.accounts().change(name, now -> now.withPassword(hash, false), user());
      people.sessions().endAll(account.get());
      deeds(people).add(Kind.PASSWORD_CHANGED, account.get().name(), "by a command");
      return done("The password of " + account.get().name() + " is changed.");
    }
  }

  @Command(
      name = "close",
      description =
          "Close an account: nobody signs in with it any more, its tokens end, its name stays in"
              + " the history. The last administrator goes last of all.",
      mixinStandardHelpOptions = true)
  int close(@Parameters(paramLabel = "NAME") String name, @Mixin ExistingHomeOption home) {
    try (Records records = home.records()) {
      People people = records.people();
      Optional<Account> account = open(people, name);
      if (account.isEmpty()) {
        return wrong("There is no open account of the name " + name + ".");
      }
      if (people.accounts().isLastAdministrator(account.get())
          && people.accounts().open().size() > 1) {
        return wrong("This is the last administrator; give another person this role first.");
      }
      people.accounts().change(name, Account::shut, user());
      people.sessions().endAll(account.get());
      people.tokens().endAll(account.get());
      deeds(people).add(Kind.ACCOUNT_CLOSED, account.get().name(), account.get().role().word());
      if (!people.accounts().any()) {
        System.err.println(
            "That was the last account. Whoever uses this machine may do everything again, and a"
                + " server that others reach answers nobody.");
      }
      return done(account.get().name() + " is closed.");
    }
  }

  private static Optional<Account> open(People people, String name) {
    return people.accounts().find(name).filter(account -> !account.closed());
  }

  /** Who is signed in to the machine, which is all that is known of who runs a command. */
  private static String user() {
    return "command of " + System.getProperty("user.name", "somebody");
  }

  private static Deeds deeds(People people) {
    return Deeds.ofCommand(people.trail(), user());
  }

  private static int done(String words) {
    System.err.println(words);
    return Exit.DONE;
  }

  private static int wrong(String words) {
    System.err.println(words);
    return Exit.WRONG;
  }
}
