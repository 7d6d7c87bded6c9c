package gapwise.store;

import static java.nio.charset.StandardCharsets.UTF_8;

import gapwise.store.database.Checksum;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.HexFormat;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.CRC32;
import org.jdbi.v3.core.ConnectionException;
import org.jdbi.v3.core.Handle;

/**
 * The note that a home keeps of how far its change log had come, beside the database, so that a
 * database that lost changes, or is gone, is told from a new one. Written after each write, when
 * that is on the disk: so it may be behind the database, never ahead of it.
 *
 * <p>The file is text of one length, written over in one go:
 *
 * <pre>
 * gapwise home 1
 * change             412
 * written 2026-03-01T12:00:00.000Z
 * mark 64 hexadecimal digits: SHA-256 of kind, key, version and time of that change
 * base 32 hexadecimal digits: which database of a server it was; no such line where it is the file
 * check 8 hexadecimal digits: CRC-32 of all before this line
 * </pre>
 */
final class HomeMarker implements AutoCloseable {
  /** The file within the home. */
  static final String FILE = "gapwise.home";

  private static final int LENGTH = 256;

  /** Readings before a note counts as damaged; each takes as long as many writes of one. */
  private static final int TRIES = 3;

  private static final Pattern TEXT =
      Pattern.compile(
          "(gapwise home 1\nchange +(\\d{1,18})\nwritten (\\S*)\nmark ([0-9a-f]{64})\n"
              + "(?:base ([0-9a-f]{32})\n)?)"
              + "check ([0-9a-f]{8})\\s*");

  private final FileChannel channel;
  private final String base;

  private HomeMarker(FileChannel channel, String base) {
    this.channel = channel;
    this.base = base;
  }

  /** What to say of a database that is not as it was left. */
  interface Words {
    /** The database is not there or holds nothing, though it held something. */
    StoreUnusableException missing(boolean isThere, Reached held);

    /** The database ends before what was acknowledged. */
    StoreUnusableException behind(long last, Reached acknowledged);

    /** The database is not the one that the home had. */
    StoreUnusableException other(Reached acknowledged);
  }

  /**
   * How far a change log had come.
   *
   * @param change number of its last change, 0 when it has none
   * @param when when that was written, as it stands in the database; empty when it has none
   * @param mark what tells that change from another of the same number in another log
   * @param base which database of a server it was; empty for the file of the home
   */
  record Reached(long change, String when, String mark, String base) {
    private static final String LAST = "(SELECT MAX(change_number) FROM document_version)";

    /** The end of the change log that a handle reads. */
    static Reached last(Handle handle) {
      try {
        return last(handle.getConnection());
      } catch (SQLException failure) {
        throw new ConnectionException(failure);
      }
    }

    /** Nothing is known but its number. */
    static Reached seen(long change) {
      return new Reached(change, "", digest(""), "");
    }

    /** The end of the change log of a database. */
    static Reached last(Connection connection) throws SQLException {
      return at(connection, LAST).orElse(seen(0));
    }

    private static Optional<Reached> at(Connection connection, String change) throws SQLException {
      try (Statement statement = connection.createStatement();
          ResultSet row =
              statement.executeQuery(
                  "SELECT change_number, written_at, kind, document_key, version"
                      + " FROM document_version WHERE change_number = "
                      + change)) {
        return row.next()
            ? Optional.of(
                new Reached(
                    row.getLong(1),
                    row.getString(2),
                    digest(
                        "%s %s %s %s"
                            .formatted(
                                row.getString(3),
                                row.getString(4),
                                row.getString(5),
                                row.getString(2))),
                    ""))
            : Optional.empty();
      }
    }

    /** Refuses a database that does not hold this change, or another one of its number. */
    void requireIn(Connection connection, Words words) throws SQLException {
      if (change > 0) {
        Optional<Reached> there = at(connection, Long.toString(change));
        long last = last(connection).change();
        if (last == 0) {
          throw words.missing(true, this);
        }
        if (there.isEmpty()) {
          throw words.behind(last, this);
        }
        if (!there.get().mark().equals(mark)) {
          throw words.other(this);
        }
      }
    }

    private static String digest(String text) {
      return Checksum.of(text.getBytes(UTF_8));
    }
  }

  /** What the home's note says; empty when there is none or it is damaged. */
  static Optional<Reached> read(Path home) throws IOException {
    Optional<Reached> read = readOnce(home);
    // Another process may be writing it over just now.
    for (int again = 1; read.isEmpty() && again < TRIES; again++) {
      read = readOnce(home);
    }
    return read;
  }

  private static Optional<Reached> readOnce(Path home) throws IOException {
    Path file = home.resolve(FILE);
    if (!Files.isRegularFile(file) || Files.size(file) != LENGTH) {
      return Optional.empty();
    }
    Matcher text = TEXT.matcher(new String(Files.readAllBytes(file), UTF_8));
    if (!text.matches() || !checkOf(text.group(1)).equals(text.group(6))) {
      return Optional.empty();
    }
    return Optional.of(
        new Reached(
            Long.parseLong(text.group(2)),
            text.group(3),
            text.group(4),
            Objects.requireNonNullElse(text.group(5), "")));
  }

  /** Opens the note of a home with a file for writing, making it where it is not there. */
  static HomeMarker open(Path home) throws IOException {
    return open(home, "");
  }

  /** The same of a home whose records are in a database of a server. */
  static HomeMarker open(Path home, String base) throws IOException {
    return new HomeMarker(
        OwnerOnly.open(home.resolve(FILE), StandardOpenOption.CREATE, StandardOpenOption.WRITE),
        base);
  }

  /** Writes down how far the change log has come. */
  void set(Reached reached) throws IOException {
    String text =
        "gapwise home 1\nchange %19d\nwritten %s\nmark %s\n"
                .formatted(reached.change(), reached.when(), reached.mark())
            + (base.isEmpty() ? "" : "base " + base + "\n");
    String line = text + "check " + checkOf(text);
    byte[] bytes = (line + " ".repeat(LENGTH - 1 - line.length()) + "\n").getBytes(UTF_8);
    channel.write(ByteBuffer.wrap(bytes), 0);
    if (channel.size() > LENGTH) {
      channel.truncate(LENGTH);
    }
  }

  private static String checkOf(String text) {
    CRC32 check = new CRC32();
    check.update(text.getBytes(UTF_8));
    return HexFormat.of().toHexDigits((int) check.getValue());
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
