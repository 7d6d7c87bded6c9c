package gapwise.store.database;

import java.io.IOException;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;

/** Where records are, and how one reads and writes there. Safe for threads. */
public sealed interface Database permits SqliteDatabase, PostgresDatabase {
  /** The file within a home that keeps its records, where no server does. */
  String FILE = "gapwise.db";

  /** A connection that may write. */
  Connection connect() throws SQLException;

  /** A connection for questions, each of which goes through {@link #ask}. */
  Connection connectToRead() throws SQLException;

  /**
   * A connection that reads everything as it stands at one moment, or a little later where the
   * change log has gone on. Writes nothing.
   */
  Connection connectToLook() throws SQLException;

  /** Whether a connection that was kept for a while can still be used. */
  boolean isUsable(Connection kept);

  /** How many questions one process asks at once. */
  int mostReadsAtOnce();

  /** Asks one question of one moment, on a connection of {@link #connectToRead}. */
  <T> T ask(Handle handle, Function<Handle, T> question);

  /**
   * Waits for whoever writes, in whatever process, and keeps others from it until the end of the
   * transaction, which has just begun. Nobody who reads waits.
   */
  void takeTurn(Handle writer);

  /**
   * Brings the layout up to this program's; whoever calls has made sure that it is no newer one.
   *
   * @return how many migrations were applied
   */
  int migrate();

  /** Size of the records, which a look at all of them takes time for. */
  long bytes() throws IOException, SQLException;
}
