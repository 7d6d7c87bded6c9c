package gapwise.exchange.form;

import java.util.ArrayList;
import java.util.List;

/**
 * Several values in one cell, separated by semicolons.
 *
 * @param item how one of them is written
 */
public record ListForm<T>(CellForm<T> item) implements CellForm<List<T>> {
  public static ListForm<String> ofTexts() {
    return new ListForm<>(new TextForm());
  }

  @Override
  public List<T> read(String text) throws UnreadableException {
    List<T> values = new ArrayList<>();
    for (String part : Items.split(text)) {
      values.add(item.read(part));
    }
    return List.copyOf(values);
  }

  @Override
  public String write(List<T> values) {
    return Items.join(values.stream().map(item::write).toList());
  }

  @Override
  public List<String> allowed() {
    return item.allowed();
  }
}
