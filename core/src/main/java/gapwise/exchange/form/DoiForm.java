package gapwise.exchange.form;

import gapwise.evidence.Doi;

/**
 * A digital object identifier, without the address that people copy with it. What does not look
 * like one is kept as written, and a rule asks about it.
 */
public record DoiForm() implements CellForm<String> {
  @Override
  public String read(String text) {
    return Doi.bare(text);
  }

  @Override
  public String write(String value) {
    return value;
  }
}
