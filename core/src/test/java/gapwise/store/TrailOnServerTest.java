package gapwise.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.List;

/** The same promises, kept by a database of a PostgreSQL server. */
class TrailOnServerTest extends TrailTest {
  @Override
  StorePlace newPlace(Path folder) {
    return RealServer.newPlace(folder);
  }

  @Override
  List<String> changes() {
    return List.of(
        "UPDATE trail_entry SET person = 'other'",
        "UPDATE trail_entry SET outcome = '' WHERE entry_number = 1",
        "DELETE FROM trail_entry",
        "DELETE FROM trail_entry WHERE entry_number = 2",
        "TRUNCATE trail_entry",
        "INSERT INTO trail_entry VALUES (9, '', 'write', '', '', '', '')");
  }

  @Override
  String refusal() {
    return "of the trail";
  }

  @Override
  Connection behind() throws SQLException {
    return DriverManager.getConnection(place.database().orElseThrow().url());
  }
}
