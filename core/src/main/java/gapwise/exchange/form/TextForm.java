package gapwise.exchange.form;

/** Any words, as written. */
public record TextForm() implements CellForm<String> {
  @Override
  public String read(String text) {
    return text;
  }

  @Override
  public String write(String value) {
    return value;
  }
}
