package gapwise.server.account;

import gapwise.store.Trail;
import gapwise.store.Trail.Deed;
import java.util.Locale;

/**
 * What is written into the trail. Addresses are shortened, since they tell of places; what was
 * typed as a name that nobody has is not kept, since it may be a password in the wrong field.
 *
 * @param trail where it is written
 * @param by the name of who does it; empty where nobody is known
 * @param from the shortened address it comes from; empty for the command line
 */
public record Deeds(Trail trail, String by, String from) {
  /** What stands for the address of a command. */
  private static final String COMMAND = "command line";

  /** Of a command on the machine itself. */
  public static Deeds ofCommand(Trail trail, String user) {
    return new Deeds(trail, user, COMMAND);
  }

  /** What may be found in the trail, each with its words. */
  public enum Kind {
    SIGN_IN("signed in"),
    SIGN_IN_REFUSED("sign-in refused"),
    SIGN_OUT("signed out"),
    REFUSED("not allowed"),
    WRITE("wrote"),
    ACCOUNT_MADE("made an account"),
    ACCOUNT_CLOSED("closed an account"),
    ROLE_CHANGED("changed a role"),
    PASSWORD_CHANGED("changed a password"),
    TOKEN_MADE("made a token"),
    TOKEN_ENDED("ended a token");

    private final String words;

    Kind(String words) {
      this.words = words;
    }

    /** As it is kept. */
    public String code() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** As it is shown; what a newer program wrote is shown as it is kept. */
    public static String words(String code) {
      for (Kind kind : values()) {
        if (kind.code().equals(code)) {
          return kind.words;
        }
      }
      return code;
    }
  }

  /**
   * Writes one down.
   *
   * @param subject what it was done to
   * @param outcome what became of it
   */
  public void add(Kind kind, String subject, String outcome) {
    trail.add(new Deed(kind.code(), by, from, subject, outcome));
  }
}
