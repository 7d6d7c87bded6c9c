package gapwise.table;

import java.util.ArrayList;
import java.util.List;
import org.xml.sax.Attributes;
import org.xml.sax.helpers.DefaultHandler;

/**
 * The texts that cells point to by number, each kept once. Read here rather than by the library,
 * whose table makes an XML document of every text it hands out.
 */
final class SharedTexts extends DefaultHandler {
  private final List<String> texts = new ArrayList<>();
  private final TextRuns runs = new TextRuns();

  /**
   * @throws IllegalArgumentException for a number that the table does not have
   */
  String at(int number) {
    if (number < 0 || number >= texts.size()) {
      throw new IllegalArgumentException("no shared text " + number + " of " + texts.size());
    }
    return texts.get(number);
  }

  @Override
  public void startElement(String uri, String name, String qualified, Attributes attributes) {
    if (name.equals("si")) {
      runs.clear();
    }
    runs.start(name);
  }

  @Override
  public void endElement(String uri, String name, String qualified) {
    runs.end(name);
    if (name.equals("si")) {
      texts.add(runs.text());
    }
  }

  @Override
  public void characters(char[] characters, int start, int length) {
    runs.characters(characters, start, length);
  }
}
