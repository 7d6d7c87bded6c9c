package gapwise.server.account;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** What a person of the team is; each may do what those before it may, and more. */
public enum Role {
  READER("reads the evidence and its answers"),
  EXTRACTOR("reads, and brings in studies, references and choices of screening"),
  ADJUDICATOR("does what an extractor does, and settles what two people see otherwise"),
  ADMINISTRATOR("does what an adjudicator does, and looks after the accounts");

  private final String does;

  Role(String does) {
    this.does = does;
  }

  /** The role of a word, in small letters. */
  public static Optional<Role> find(String word) {
    return Stream.of(values()).filter(role -> role.word().equals(word)).findFirst();
  }

  /** Its word, as it is kept, typed and shown. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** What who has it does, as the end of a sentence. */
  public String does() {
    return does;
  }

  /** Whether it has a right. */
  public boolean may(Right right) {
    return switch (right) {
      case OPEN, SEE, OWN -> true;
      case EXTRACT -> isAtLeast(EXTRACTOR);
      case SETTLE -> isAtLeast(ADJUDICATOR);
      case ADMINISTER -> isAtLeast(ADMINISTRATOR);
    };
  }

  /** Whether it may all that another may. */
  public boolean isAtLeast(Role other) {
    return compareTo(other) >= 0;
  }
}
