package gapwise.store;

import gapwise.problem.Problem;

/**
 * Words for a database of a server that is not as the home left it. Nothing has been changed when
 * they are said.
 *
 * @param place the home and its database
 */
record ServerFailures(StorePlace place) implements HomeMarker.Words {
  private static final String GO_ON =
      " Name the right database. To go on with this one, knowing that it is another state of the"
          + " records, delete the file "
          + HomeMarker.FILE
          + " and the folder index of the home first, or name a new home.";

  StoreUnusableException noBase() {
    return unusable(
        "no-home",
        "There is no evidence base in this database. Check its name; a new one is made by serve and"
            + " import, or by restore from a backup.");
  }

  @Override
  public StoreUnusableException missing(boolean isThere, HomeMarker.Reached held) {
    return unusable(
        "store-emptied",
        "The database is empty, though this home had seen "
            + held.change()
            + " changes in it"
            + (held.when().isEmpty() ? "" : ", the last at " + held.when())
            + ". Have it brought back, or put the last backup back by the command restore."
            + GO_ON);
  }

  @Override
  public StoreUnusableException behind(long last, HomeMarker.Reached acknowledged) {
    return unusable(
        "store-behind",
        "The database ends at change "
            + last
            + ", though changes up to "
            + acknowledged.change()
            + " were acknowledged, the last at "
            + acknowledged.when()
            + ": "
            + (acknowledged.change() - last)
            + " are lost. That is so when an older copy of the database was put in its place."
            + GO_ON);
  }

  @Override
  public StoreUnusableException other(HomeMarker.Reached acknowledged) {
    return unusable(
        "store-other",
        "The database is not the one that this home had"
            + (acknowledged.change() == 0
                ? "."
                : ": its change "
                    + acknowledged.change()
                    + " is not the one that was acknowledged at "
                    + acknowledged.when()
                    + ".")
            + GO_ON);
  }

  /** The home kept its records in its own file until now. */
  StoreUnusableException inHome() {
    return unusable(
        "store-elsewhere",
        "The home "
            + place.home()
            + " keeps records in its own file, and would show those of a database. To move them"
            + " there, write a backup of the home by the command backup, without a database, and put"
            + " it into the empty database by the command restore. Else name another home.");
  }

  StoreUnusableException foreign() {
    return unusable(
        "store-foreign",
        "The database holds tables, but none of this program. Name a database of its own.");
  }

  StoreUnusableException encoding(String found) {
    return unusable(
        "database-encoding",
        "The database keeps text as "
            + found
            + ", which cannot hold every character. Have it created with the encoding UTF8.");
  }

  /** What stands in the way of a backup that is to be put into a database. */
  StoreUnusableException notEmpty(long changes) {
    return unusable(
        "database-not-empty",
        "The database holds "
            + changes
            + " changes already, and a backup goes into an empty one, so that no history is ever"
            + " written over. Have a new database created and name that.");
  }

  private StoreUnusableException unusable(String code, String message) {
    return new StoreUnusableException(new Problem(place.shown(), code, message));
  }
}
