package gapwise.exchange.form;

import gapwise.evidence.Ids;

/** The short name of a study, an arm or a patient. */
public record IdForm() implements CellForm<String> {
  @Override
  public String read(String text) throws UnreadableException {
    if (!Ids.isId(text)) {
      throw new UnreadableException(
          "id-form",
          "a short name of at most "
              + Ids.LONGEST
              + " characters in one line was expected, the same on every sheet. Shorten it.");
    }
    return text;
  }

  @Override
  public String write(String value) {
    return value;
  }
}
