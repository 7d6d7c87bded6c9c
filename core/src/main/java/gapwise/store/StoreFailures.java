package gapwise.store;

import gapwise.problem.Problem;
import gapwise.store.database.Database;
import gapwise.store.database.Dialect;
import gapwise.store.database.PostgresWords;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.function.Supplier;
import org.flywaydb.core.api.FlywayException;
import org.jdbi.v3.core.JdbiException;
import org.sqlite.NativeLibraryNotFoundException;
import org.sqlite.SQLiteErrorCode;

/**
 * Words for what a database can suffer.
 *
 * @param home the home, or the file, that it is about
 * @param place what it is called in messages: the same, or the database of a server
 */
record StoreFailures(Path home, String place) {
  static final String DAMAGED = "store-damaged";

  /** Room that the database's own index of its log may need. */
  private static final long LEAST_ROOM_BYTES = 64 * 1024;

  StoreFailures(Path home) {
    this(home, home.toString());
  }

  /** Does some work with the database; its failures come out in words, all others untouched. */
  <T> T inWords(Supplier<T> work) {
    try {
      return work.get();
    } catch (JdbiException | FlywayException failure) {
      throw worded(failure);
    }
  }

  /** The words for the innermost reason that carries a code of the database. */
  StoreUnusableException worded(Exception failure) {
    SQLiteErrorCode code = SQLiteErrorCode.UNKNOWN_ERROR;
    for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
      if (cause instanceof StoreUnusableException told) {
        return told;
      }
      if (cause instanceof NativeLibraryNotFoundException) {
        return new StoreUnusableException(problem("store-failed", NO_ROOM_FOR_LIBRARY), failure);
      }
      if (cause instanceof SQLException sql && PostgresWords.isOfServer(sql)) {
        return unusable(PostgresWords.of(sql), failure);
      }
      if (cause instanceof SQLException sql && sql.getErrorCode() != 0) {
        code = SQLiteErrorCode.getErrorCode(sql.getErrorCode());
      }
    }
    return new StoreUnusableException(problem(code), failure);
  }

  StoreUnusableException unusable(PostgresWords words, Exception cause) {
    return new StoreUnusableException(problem(words.code(), words.message()), cause);
  }

  StoreUnusableException inUse() {
    return unusable(
        "store-in-use",
        "Another run of the program has this home open, a server or a command under way, and this"
            + " needs it alone. Stop that one, then try again.");
  }

  StoreUnusableException heldAlone() {
    return unusable(
        "store-in-use",
        "Another run of the program has this home for itself: it restores a backup, or is of an older"
            + " version. Try again when it has ended, or give this one another home.");
  }

  StoreUnusableException newer(String version) {
    return unusable(
        "store-newer",
        "The store was last used by a newer version of the program (its layout \""
            + version
            + "\" is not known here). Use that version, or a home of its own for this one.");
  }

  StoreUnusableException homeUnusable(Exception cause) {
    return new StoreUnusableException(
        problem(
            "home-unusable",
            "The home cannot be made or written. Check that the disk is there and that the user"
                + " who runs the program may write to it."),
        cause);
  }

  /** Findings of a check, with what to do. */
  StoreUnusableException damaged(Soundness found) {
    return unusable(DAMAGED, found.told() + " " + KEEP_AND_RESTORE);
  }

  private static final String KEEP_AND_RESTORE =
      "Keep a copy of the home as it is, then put the last sound backup back by the command"
          + " restore.";

  private static final String NO_ROOM_FOR_LIBRARY =
      "The database cannot be opened, for its library could not be unpacked into the folder of"
          + " temporary files, "
          + System.getProperty("java.io.tmpdir")
          + ". Make room there, and check that the user who runs the program may write to it.";

  private Problem problem(SQLiteErrorCode code) {
    return switch (Dialect.primary(code.code)) {
      case SQLITE_CORRUPT, SQLITE_NOTADB ->
          problem(DAMAGED, "The file " + Database.FILE + " is damaged. " + KEEP_AND_RESTORE);
      case SQLITE_FULL -> diskFull();
      // Told so when there was not even room for the index of the log.
      case SQLITE_IOERR -> hasRoom() ? failed(code) : diskFull();
      case SQLITE_READONLY, SQLITE_CANTOPEN, SQLITE_PERM ->
          problem(
              "home-unusable",
              "The file "
                  + Database.FILE
                  + " cannot be opened for writing. Check that the user who runs the program may write"
                  + " to it and to its folder.");
      case SQLITE_BUSY, SQLITE_LOCKED ->
          problem(
              "store-in-use",
              "Another program holds the file "
                  + Database.FILE
                  + " locked. Close whatever has it open and try again.");
      default -> failed(code);
    };
  }

  private Problem failed(SQLiteErrorCode code) {
    return problem(
        "store-failed",
        "The database reported "
            + code
            + "; what was being done was undone. Try again; if it comes back, check the disk.");
  }

  private Problem diskFull() {
    return problem(
        "disk-full", "The disk is full, so nothing was written. Make room and try again.");
  }

  private boolean hasRoom() {
    try {
      return Files.getFileStore(home).getUsableSpace() >= LEAST_ROOM_BYTES;
    } catch (IOException unknown) {
      return true;
    }
  }

  StoreUnusableException unusable(String code, String message) {
    return new StoreUnusableException(problem(code, message));
  }

  private Problem problem(String code, String message) {
    return new Problem(place, code, message);
  }
}
