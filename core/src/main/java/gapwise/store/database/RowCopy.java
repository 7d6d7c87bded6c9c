package gapwise.store.database;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Collections;
import java.util.List;

/** Every row of every table of records, from one database into another of the same layout. */
public final class RowCopy {
  /** Rows sent at a time. */
  private static final int ROWS_AT_A_TIME = 100;

  private final Connection from;
  private final Connection to;

  private RowCopy(Connection from, Connection to) {
    this.from = from;
    this.to = to;
  }

  /**
   * Copies them, one at a time in memory, within the transaction that is open on the target.
   *
   * @param from both at this program's layout
   * @param to without a row
   */
  public static void between(Connection from, Connection to) throws SQLException {
    RowCopy copy = new RowCopy(from, to);
    for (String table : Layout.tablesOfRecords(to)) {
      copy.table(table);
    }
  }

  private void table(String table) throws SQLException {
    List<String> columns = Dialect.of(to).columns(to, table);
    String names = String.join(", ", columns);
    String places = String.join(", ", Collections.nCopies(columns.size(), "?"));
    // The first column is what rows are numbered or named by, so that a log is copied in its order.
    String query = "SELECT " + names + " FROM " + table + " ORDER BY " + columns.get(0);
    try (Statement read = from.createStatement();
        ResultSet row = read.executeQuery(query);
        PreparedStatement write =
            to.prepareStatement(
                "INSERT INTO " + table + " (" + names + ") VALUES (" + places + ")")) {
      int waiting = 0;
      while (row.next()) {
        for (int column = 1; column <= columns.size(); column++) {
          write.setObject(column, row.getObject(column));
        }
        write.addBatch();
        waiting = (waiting + 1) % ROWS_AT_A_TIME;
        if (waiting == 0) {
          write.executeBatch();
        }
      }
      write.executeBatch();
    }
  }
}
