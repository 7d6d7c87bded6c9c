package gapwise.store.database;

import java.sql.SQLException;

/**
 * Words for what a PostgreSQL server reports, by its code of five letters and digits (Appendix A,
 * "PostgreSQL Error Codes", of the server's manual). What the server itself says is not shown: it
 * may name who connects and from where.
 *
 * @param code of a problem
 * @param message what happened and what to do
 */
public record PostgresWords(String code, String message) {
  static final String TOO_MANY = "53300";
  static final String CANCELLED = "57014";

  private static final String TRY_AGAIN =
      " Try again in a minute. If it stays, ask whoever looks after the database server.";

  /** Whether a failure comes from a server, or from the way to it. */
  public static boolean isOfServer(SQLException failure) {
    return failure.getSQLState() != null && failure.getSQLState().length() == 5;
  }

  /** Whether the connection is gone, so that nothing is known of what was asked last. */
  public static boolean isLostConnection(SQLException failure) {
    String state = String.valueOf(failure.getSQLState());
    return state.startsWith("08") || state.startsWith("57P");
  }

  /** Whether the server found its own files damaged. */
  public static boolean isDamage(SQLException failure) {
    String state = String.valueOf(failure.getSQLState());
    return state.equals("XX001") || state.equals("XX002");
  }

  /** The words for a failure of a server. */
  public static PostgresWords of(SQLException failure) {
    String state = String.valueOf(failure.getSQLState());
    return switch (state) {
      case "08001", "08004", "57P03" -> away("The database server cannot be reached." + TRY_AGAIN);
      case "28P01", "28000" ->
          new PostgresWords(
              "database-refused",
              "The database server does not let this user in. Check the user in the address of the"
                  + " database, and the password in the environment variable PGPASSWORD or in the"
                  + " driver's file of passwords.");
      case "3D000" ->
          new PostgresWords(
              "no-database",
              "The server has no database of this name. Check the name, or have whoever looks after"
                  + " the server create it.");
      case "42501" ->
          new PostgresWords(
              "database-refused",
              "The user of the database may not do this there. The database should belong to this"
                  + " user.");
      case "53100" ->
          new PostgresWords(
              "disk-full",
              "The disk of the database server is full, so nothing was written. Have room made"
                  + " there and try again.");
      case TOO_MANY ->
          new PostgresWords(
              "store-busy", "All connections to the database are in use just now. Try again.");
      case "25006" ->
          new PostgresWords(
              "database-read-only",
              "The database lets itself be read and not written, as a copy of another server does,"
                  + " so nothing was written. Name the server that may be written.");
      case "55P03", "40001", "40P01" ->
          new PostgresWords(
              "store-in-use",
              "Another write to the database was under way for so long that this one was given up."
                  + " Nothing of it was written. Try again.");
      case "22021", "22P05" ->
          new PostgresWords(
              "text-unwritable",
              "The text holds a character that the database cannot keep, such as the character of"
                  + " number 0. Nothing was written. Take the character out.");
      default ->
          isDamage(failure)
              ? new PostgresWords(
                  "store-damaged",
                  "The database server found its own files damaged. Have whoever looks after it"
                      + " keep a copy of them, and put the last sound backup into a new database by"
                      + " the command restore.")
              : isLostConnection(failure)
                  ? away(
                      "The connection to the database was lost before anything was written."
                          + TRY_AGAIN)
                  : new PostgresWords(
                      "store-failed",
                      "The database server reported the code "
                          + state
                          + "; what was being done was undone. Try again; if it comes back, ask"
                          + " whoever looks after the server.");
    };
  }

  private static PostgresWords away(String message) {
    return new PostgresWords("database-away", message);
  }

  /** For a commit whose answer never came. */
  public static PostgresWords unknown() {
    return new PostgresWords(
        "store-unknown",
        "The connection to the database was lost just as this was being written, so it is not known"
            + " whether it was written. Look whether it is there before you try again.");
  }
}
