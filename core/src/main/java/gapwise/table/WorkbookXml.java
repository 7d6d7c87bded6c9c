package gapwise.table;

import org.xml.sax.Attributes;
import org.xml.sax.helpers.DefaultHandler;

/** The workbook's own part: whether its days are counted from 1904 instead of 1900. */
final class WorkbookXml extends DefaultHandler {
  private boolean startsIn1904;

  boolean startsIn1904() {
    return startsIn1904;
  }

  @Override
  public void startElement(String uri, String name, String qualified, Attributes attributes) {
    if (name.equals("workbookPr")) {
      String flag = attributes.getValue("date1904");
      startsIn1904 = "1".equals(flag) || "true".equals(flag);
    }
  }
}
