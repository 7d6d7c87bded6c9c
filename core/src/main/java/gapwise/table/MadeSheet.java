package gapwise.table;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A sheet that no file holds, such as what a person types on a page: passed on as if it had been
 * read. The header is row 1, the first row below it row 2.
 *
 * @param name name of the sheet
 * @param columns names of the columns, all different, none blank
 * @param rows texts of the cells, one for each column; a blank one is empty
 */
public record MadeSheet(String name, List<String> columns, List<List<String>> rows) {
  public MadeSheet {
    columns = List.copyOf(columns);
    rows = rows.stream().map(List::copyOf).toList();
    for (List<String> row : rows) {
      if (row.size() != columns.size()) {
        throw new IllegalArgumentException(
            "a row of " + name + " has " + row.size() + " cells for " + columns.size());
      }
    }
  }

  /** Hands it to a consumer; rows without any text are passed over, as in a file. */
  public void read(SheetConsumer consumer) {
    if (!consumer.wants(name)) {
      return;
    }
    List<String> names = columns;
    Header header =
        new Header(
            name,
            1,
            IntStream.range(0, names.size())
                .mapToObj(at -> new Column(names.get(at), at))
                .toList());
    consumer.begin(header);
    for (int at = 0; at < rows.size(); at++) {
      List<Value> values = new ArrayList<>();
      rows.get(at).forEach(text -> values.add(Value.text(text)));
      if (!values.stream().allMatch(Value::isBlank)) {
        consumer.row(new Row(header, at + 2, values));
      }
    }
    consumer.end(header);
  }
}
