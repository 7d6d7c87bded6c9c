package gapwise.store;

import gapwise.store.database.DatabaseFile;
import gapwise.store.database.Dialect;
import gapwise.store.database.Layout;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.stream.Collectors;

/**
 * What a look at every page and every record of an open database found, and what tells the history
 * looked at from any other.
 *
 * @param digest equal for equal histories up to the same change
 */
record Examination(Soundness soundness, String digest) {
  /**
   * @param digestUpTo last change that counts for the digest
   */
  static Examination of(Connection connection, long digestUpTo, BooleanSupplier stopped)
      throws SQLException {
    List<String> structure = structure(connection);
    VersionPass pass =
        new VersionPass(connection, Layout.hasChecksums(connection), digestUpTo, stopped);
    pass.run(expected(connection));
    return new Examination(
        new Soundness(
            pass.versions(),
            pass.last(),
            pass.lastAt(),
            pass.withoutChecksum(),
            structure,
            named(connection, pass.damaged())),
        pass.digest());
  }

  /** Refuses a database with anything wrong in it, naming the records. */
  static void requireSound(Connection connection, StoreFailures failures) throws SQLException {
    Soundness found = of(connection, Long.MAX_VALUE, () -> false).soundness();
    if (!found.isSound()) {
      throw failures.damaged(found);
    }
  }

  /** What is wrong with the file, in the database's own words; empty when nothing is. */
  static List<String> structure(Connection connection) throws SQLException {
    try {
      return Dialect.of(connection).structure(connection);
    } catch (SQLException failure) {
      if (Dialect.isDamage(failure)) {
        Dialect.of(connection).goOn(connection);
        return List.of("the check itself could not read it");
      }
      throw failure;
    }
  }

  /** The last change there should be: as many as the index over all versions holds. */
  private static long expected(Connection connection) throws SQLException {
    OptionalLong count = ifReadable(connection, "SELECT COUNT(*) FROM document_version");
    return count.isPresent()
        ? count.getAsLong()
        : ifReadable(connection, "SELECT MAX(change_number) FROM document_version").orElse(0);
  }

  private static OptionalLong ifReadable(Connection connection, String query) throws SQLException {
    try {
      return OptionalLong.of(DatabaseFile.number(connection, query));
    } catch (SQLException failure) {
      if (Dialect.isDamage(failure)) {
        Dialect.of(connection).goOn(connection);
        return OptionalLong.empty();
      }
      throw failure;
    }
  }

  /** Names from the index over all versions for those whose own rows give none. */
  private static List<DamagedRecord> named(Connection connection, List<DamagedRecord> damaged)
      throws SQLException {
    if (damaged.isEmpty()) {
      return damaged;
    }
    Map<Long, String> names =
        names(connection, damaged.stream().map(DamagedRecord::change).collect(Collectors.toSet()));
    List<DamagedRecord> named = new ArrayList<>();
    for (DamagedRecord record : damaged) {
      String name = names.getOrDefault(record.change(), record.name());
      named.add(new DamagedRecord(record.change(), name, record.what()));
    }
    return named;
  }

  private static Map<Long, String> names(Connection connection, Set<Long> changes)
      throws SQLException {
    Map<Long, String> names = new HashMap<>();
    try (Statement statement = connection.createStatement();
        // Answered from the index alone, which holds just these columns in this order.
        ResultSet rows =
            statement.executeQuery(
                "SELECT change_number, kind, document_key, version FROM document_version"
                    + " ORDER BY kind, document_key, version")) {
      while (rows.next()) {
        if (changes.contains(rows.getLong(1))) {
          names.put(
              rows.getLong(1),
              rows.getString(2) + " " + rows.getString(3) + ", version " + rows.getString(4));
        }
      }
    } catch (SQLException failure) {
      if (!Dialect.isDamage(failure)) {
        throw failure;
      }
      Dialect.of(connection).goOn(connection);
      // The index is damaged as well: those not named yet keep the number of their change.
    }
    return names;
  }
}
