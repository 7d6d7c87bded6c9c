package gapwise.store;

import gapwise.problem.Problem;
import gapwise.store.database.Database;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Words for a home that is not as it was left. Nothing has been changed when they are said. */
record HomeFailures(Path home) implements HomeMarker.Words {
  private static final String FILE = "The file " + Database.FILE;
  private static final String BRING_BACK =
      " Bring it back if it was moved or its disk is not there, or put the last backup back by the"
          + " command restore. To start anew, name another folder.";

  StoreUnusableException noHome() {
    return unusable(
        "no-home",
        "There is no evidence base in this folder. Check the name of the folder; a new one is made"
            + " by serve, demo and import alone.");
  }

  /** The database is not there or empty, and nobody says how much was in it. */
  StoreUnusableException missing() throws IOException {
    Path file = home.resolve(Database.FILE);
    if (Files.isSymbolicLink(file)) {
      return unusable(
          "store-missing",
          FILE
              + " is a link to "
              + Files.readSymbolicLink(file)
              + ", and there is no such file. Check that its disk is there and connected.");
    }
    return unusable(
        "store-missing",
        FILE + " is gone or empty, but its log beside it is not: there were records." + BRING_BACK);
  }

  @Override
  public StoreUnusableException missing(boolean fileIsThere, HomeMarker.Reached held) {
    String date = held.when().isEmpty() ? "" : ", the last at " + held.when();
    return unusable(
        fileIsThere ? "store-emptied" : "store-missing",
        FILE
            + (fileIsThere ? " is empty" : " is not there")
            + ", though this home held "
            + held.change()
            + " changes"
            + date
            + "."
            + BRING_BACK);
  }

  @Override
  public StoreUnusableException behind(long last, HomeMarker.Reached acknowledged) {
    return unusable(
        "store-behind",
        FILE
            + " ends at change "
            + last
            + ", though changes up to "
            + acknowledged.change()
            + " were acknowledged, the last at "
            + acknowledged.when()
            + ": "
            + (acknowledged.change() - last)
            + " are lost. That is so when the file "
            + Database.FILE
            + "-wal beside it was removed or damaged, or an older file was put in its place."
            + goOn());
  }

  @Override
  public StoreUnusableException other(HomeMarker.Reached acknowledged) {
    return unusable(
        "store-other",
        FILE
            + " is not the one that this home had: its change "
            + acknowledged.change()
            + " is not the one that was acknowledged at "
            + acknowledged.when()
            + "."
            + goOn());
  }

  private String goOn() {
    return " Bring the right file back, or put the last backup back by the command restore. To go on"
        + " with what is there, knowing that the rest is lost: restore "
        + home.resolve(Database.FILE)
        + " --home "
        + home;
  }

  /** The home was last open with its records on a server, and now none is named. */
  StoreUnusableException onServer() {
    return unusable(
        "store-elsewhere",
        "The records of this home are in a database of a PostgreSQL server. Name it by --database or"
            + " in the environment variable GAPWISE_DATABASE. To have them in the home itself, take a"
            + " backup of that database and put it here by the command restore.");
  }

  StoreUnusableException foreign() {
    return unusable(
        "store-foreign",
        FILE + " is a database, but not one of this program. Name another folder.");
  }

  private StoreUnusableException unusable(String code, String message) {
    return new StoreUnusableException(new Problem(home.toString(), code, message));
  }
}
